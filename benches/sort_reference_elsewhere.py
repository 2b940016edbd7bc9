"""scikit-learn's Gaussian mixture on the reference pitches, for the table in benches/README.md.

Usage: python3 benches/sort_reference_elsewhere.py tests/data/reference_pitches.csv
Prints, for all rows and for the rows without the two games measured from another zero, each count
of groups with its BIC, its integrated completed likelihood and its adjusted Rand index against the
labels. Standardised, ten starts each. Only a person who has already found the two games can make
the second half of the table.
"""

import sys

import numpy as np
import pandas as pd
from sklearn.metrics import adjusted_rand_score
from sklearn.mixture import GaussianMixture
from sklearn.preprocessing import StandardScaler

FEATURES = ["speed_50ft_mph", "break_right_from_40ft_in", "break_up_from_40ft_in"]
data = pd.read_csv(sys.argv[1])
for name, rows in [("all rows", data), ("without games 7 and 12", data[~data.game.isin([7, 12])])]:
    scaled = StandardScaler().fit_transform(rows[FEATURES])
    for k in range(2, 8):
        fit = GaussianMixture(k, n_init=10, tol=1e-4, max_iter=300, random_state=1).fit(scaled)
        chances = fit.predict_proba(scaled)
        entropy = -(chances * np.log(np.maximum(chances, 1e-300))).sum()
        bic = fit.bic(scaled)
        rand = adjusted_rand_score(rows.pitch, fit.predict(scaled))
        print(f"| {name} | {k} | {bic:.0f} | {bic + 2 * entropy:.0f} | {rand:.4f} |")
