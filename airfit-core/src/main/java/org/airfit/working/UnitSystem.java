package org.airfit.working;

/** In which units a working shows its numbers. */
public enum UnitSystem {
  /** kg, m, s, K, Pa and bar. */
  SI,
  /** lb, ft, s, °R and psi, with 32.174 lb·ft/(lbf·s²) and 144 in²/ft² where force meets mass. */
  US
}
