package org.airfit.thread;

import org.airfit.source.Source;

/** The families of pipe threads met on compressed-air parts. */
public enum ThreadFamily {
  /** American taper pipe thread: 60°, taper 1:16, seals on the thread with a sealant. */
  NPT("NPT", 60, true, Source.standard("ASME B1.20.1-2013")),
  /** R outside and Rc inside: 55°, taper 1:16, seals on the thread with a jointing medium. */
  BSPT("R", 55, true, Source.standard("ISO 7-1, as quoted in other documents")),
  /** G: 55°, parallel, seals on a face or ring and not on the thread. */
  BSPP("G", 55, false, Source.standard("ISO 228-1:2003, as quoted in other documents"));

  private final String symbol;
  private final int flankAngleDegrees;
  private final boolean tapered;
  private final Source source;

  ThreadFamily(String symbol, int flankAngleDegrees, boolean tapered, Source source) {
    this.symbol = symbol;
    this.flankAngleDegrees = flankAngleDegrees;
    this.tapered = tapered;
    this.source = source;
  }

  /** {@return how the standard marks the thread; the inside taper thread of ISO 7-1 is marked Rc} */
  public String symbol() {
    return symbol;
  }

  /** {@return the angle between the flanks [°]} */
  public int flankAngleDegrees() {
    return flankAngleDegrees;
  }

  /** {@return whether the thread runs on a cone, of taper 1:16} */
  public boolean isTapered() {
    return tapered;
  }

  /** {@return the standard} */
  public Source source() {
    return source;
  }
}
