"""The same job with pandas and scikit-learn, for comparison with `cargo bench --bench sort -- --against`.

Reads the file, drops doubled and impossible rows, standardises, fits Gaussian mixtures from one to
six groups, takes the count with the lowest BIC, assigns every row and summarises each group. It is
kinder to itself than our tool: one start instead of up to ten, and no search for days with another
zero. Argument: the CSV file; a second argument, if given, is the size of a random sample to fit on
(every row is still assigned), which is how a careful user would make it fast.
"""

import sys
import time

import pandas as pd
from sklearn.metrics import adjusted_rand_score
from sklearn.mixture import GaussianMixture
from sklearn.preprocessing import StandardScaler

FEATURES = ["speed_mph", "vertical_break_in", "glove_side_break_in"]

start = time.perf_counter()
data = pd.read_csv(sys.argv[1])
read = time.perf_counter() - start
data = data.drop_duplicates()
data = data[data.speed_mph.between(25, 110) & data[FEATURES[1:]].abs().le(80).all(axis=1)].dropna(subset=FEATURES)
scaled = StandardScaler().fit_transform(data[FEATURES])
sample = scaled
if len(sys.argv) > 2:
    sample = pd.DataFrame(scaled).sample(int(sys.argv[2]), random_state=1).to_numpy()
fits = [GaussianMixture(k, tol=1e-4, max_iter=300, random_state=1).fit(sample) for k in range(1, 7)]
best = min(fits, key=lambda fit: fit.bic(sample))
data["group"] = best.predict(scaled)
data.groupby("group")[FEATURES + ["spin_rpm", "active_fraction"]].agg(["mean", "std", "count"])
rand = adjusted_rand_score(data.pitch, data.group)
print(
    f"elsewhere: read {read:.2f} s, all {time.perf_counter() - start:.2f} s, "
    f"{best.n_components} groups, adjusted Rand {rand:.4f}"
)
