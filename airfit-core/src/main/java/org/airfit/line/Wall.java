package org.airfit.line;

import java.util.List;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRules;
import org.airfit.source.Source;

/**
 * Walls of pipe, tube and hose, and the equivalent sand roughness handbooks give them.
 *
 * <p>Handbooks disagree by as much as a factor of fifteen on the same wall, so each has a range beside the value to
 * calculate with. That value is the single figure a handbook gives; where only ranges were published, or two single
 * figures disagree, it is the rougher end, which loses too much pressure rather than too little. A wall in service is
 * rougher than a new one: ask how old the pipe is.
 *
 * <p><b>Sources:</b> beside each wall. Idelchik 2007, the cast irons and the coated steel as tabulated in the open
 * library fluids 1.0.22.
 */
public enum Wall {
  /** Drawn brass or copper tube, new. */
  DRAWN_COPPER_OR_BRASS(
      "drawn copper or brass tube, new",
      0.0015,
      0.0015,
      0.010,
      Source.handbook("Binder 1973; Idelchik 2007 gives 0.0015 to 0.01 mm")),
  /** Drawn aluminium tube, new. */
  DRAWN_ALUMINIUM(
      "drawn aluminium tube, new",
      0.010,
      0.001,
      0.010,
      Source.handbook("Idelchik 2007, seamless aluminium; a public table gives 0.001 to 0.002 mm")),
  /**
   * Smooth plastic pipe and tube. PVC pipe shatters and is not for compressed air above ground; {@link #cautions} says
   * so.
   */
  SMOOTH_PLASTIC(
      "smooth plastic pipe or tube (no PVC for compressed air)",
      0.010,
      0.0015,
      0.010,
      Source.handbook("public tables of roughness")),
  /** Stainless steel; two tables disagree fifteenfold. */
  STAINLESS_STEEL(
      "stainless steel pipe, new", 0.03, 0.002, 0.03, Source.handbook("two public tables")),
  /** Commercial steel pipe, new. */
  COMMERCIAL_STEEL(
      "commercial steel pipe, new",
      0.045,
      0.02,
      0.10,
      Source.handbook("Binder 1973; Crane TP-410 0.0018 in; Idelchik 2007 gives 0.02 to 0.1 mm")),
  /** Steel pipe lined with plastic. */
  LINED_STEEL(
      "steel pipe, plastic-coated inside",
      0.005,
      0.005,
      0.005,
      Source.handbook("Farshad and Rieke 2006")),
  /** Steel pipe that has carried compressed air for years: eighteen times new pipe. */
  STEEL_IN_AIR_SERVICE(
      "steel pipe, compressed air, in service", 0.8, 0.15, 1.0, Source.handbook("Idelchik 2007")),
  /** Galvanized steel or iron pipe, new. */
  GALVANIZED(
      "galvanized pipe, new", 0.15, 0.025, 0.152, Source.handbook("Binder 1973; Idelchik 2007")),
  /** Cast iron, asphalted. */
  ASPHALTED_CAST_IRON(
      "asphalted cast iron pipe", 0.122, 0.122, 0.122, Source.handbook("fluids 1.0.22")),
  /** Cast iron, new. */
  CAST_IRON("cast iron pipe, new", 0.26, 0.259, 0.26, Source.handbook("Binder 1973")),
  /** Rubber hose with a smooth bore. */
  SMOOTH_RUBBER_HOSE(
      "rubber hose, smooth bore", 0.01, 0.006, 0.07, Source.handbook("two public tables")),
  /** Rubber hose whose bore shows the wire of its reinforcement. */
  CORRUGATED_RUBBER_HOSE(
      "rubber hose, corrugated bore", 4.0, 0.3, 4.0, Source.handbook("public table of roughness"));

  private final String label;
  private final Length roughness;
  private final Length least;
  private final Length most;
  private final Source source;

  Wall(String label, double millimetres, double least, double most, Source source) {
    this.label = label;
    this.roughness = Length.ofMillimetres(millimetres);
    this.least = Length.ofMillimetres(least);
    this.most = Length.ofMillimetres(most);
    this.source = source;
  }

  /** {@return the wall in words} */
  public String label() {
    return label;
  }

  /** {@return the roughness to calculate with} */
  public Length roughness() {
    return roughness;
  }

  /** {@return the smoothest published for it} */
  public Length least() {
    return least;
  }

  /** {@return the roughest published for it} */
  public Length most() {
    return most;
  }

  /** {@return whether it is of plastic all through, which a blow or age may shatter} */
  public boolean isPlastic() {
    return this == SMOOTH_PLASTIC;
  }

  /** {@return the warnings that go with a line of this wall} */
  public List<Caution> cautions() {
    return isPlastic()
        ? List.of(SafetyRules.usFederal().reminder("Plastic pipe for compressed air"))
        : List.of();
  }

  /** {@return where the values come from} */
  public Source source() {
    return source;
  }

  /** {@return the wall and its roughness, such as "commercial steel pipe, new: 0.045 mm (0.02 to 0.1)"} */
  @Override
  public String toString() {
    String range = least.equals(most)
        ? ""
        : " (" + least.format(LengthUnit.MILLIMETRE) + " to " + most.format(LengthUnit.MILLIMETRE)
            + ")";
    return label + ": " + roughness.format(LengthUnit.MILLIMETRE) + range;
  }
}
