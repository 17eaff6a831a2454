package org.airfit.joint;

/** Numeric kernel of a mismatch: millimetres in, turns out, no checks. */
final class MismatchKernels {

  private MismatchKernels() {}

  /** Turns until something meets, see {@link ThreadMismatch}; 0 if it does not start, infinite if nothing stops it. */
  static double turns(
      double clearance,
      double tightest,
      double pitch,
      double pitchDifference,
      double tanHalfFlank,
      int tapers) {
    if (!(clearance > 0.0 && tightest > 0.0)) {
      return 0.0;
    }
    double closing = tapers == 0 ? 0.0 : pitch * tanHalfFlank / (tapers == 2 ? 16.0 : 32.0);
    double consumed = pitchDifference + closing;
    double turns = consumed == 0.0 ? Double.POSITIVE_INFINITY : clearance * tanHalfFlank / consumed;
    return tapers == 0 ? turns : Math.min(turns, 16.0 * Math.min(clearance, tightest) / pitch);
  }
}
