package org.airfit.plug;

/** What a coupling is made to carry. Only plugs for compressed air are ever compared here. */
public enum Medium {
  /** Air-line couplings, the only ones a {@link ReferenceSet} takes. */
  COMPRESSED_AIR("compressed air"),
  /** Couplings for oxygen, fuel gas and the like, made on purpose not to fit air couplings (ISO 7289, EN 561). */
  WELDING_GAS("welding gas"),
  /** Couplings for hydraulic oil (ISO 7241, ISO 14541, ISO 16028). */
  HYDRAULIC("hydraulic oil");

  private final String label;

  Medium(String label) {
    this.label = label;
  }

  /** {@return the medium in words} */
  public String label() {
    return label;
  }
}
