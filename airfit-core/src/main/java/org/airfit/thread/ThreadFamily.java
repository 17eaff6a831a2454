package org.airfit.thread;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Source;

/**
 * The families of pipe threads met on compressed-air parts.
 *
 * <p>What a family is stands here; {@link PipeThreads} finds the geometry of a size. Of the dryseal families (NPTF,
 * PTF-SAE SHORT, NPSF, NPSI) no table was seen: it is known what they mate with, but they have no {@link PipeThread}.
 * Their sizes are from memory.
 */
public enum ThreadFamily {
  /** American taper pipe thread: 60°, taper 1:16, seals on the thread with a sealant. */
  NPT(
      "NPT",
      ThreadForm.FLAT_60,
      true,
      Cut.BOTH,
      Span.of("1/16", "4"),
      Source.standard("ASME B1.20.1-2013")),
  /** American straight thread inside pipe couplings: takes NPT, with a sealant, for low pressure. */
  NPSC(
      "NPSC",
      ThreadForm.FLAT_60,
      false,
      Cut.FEMALE_ONLY,
      Span.of("1/8", "4"),
      Source.standard("ASME B1.20.1-2013, section 4")),
  /** American straight thread for free-fitting mechanical joints: seals on a seat or washer, not on the thread. */
  NPSM(
      "NPSM",
      ThreadForm.FLAT_60,
      false,
      Cut.BOTH,
      Span.of("1/8", "4"),
      Source.standard("ASME B1.20.1-2013, section 6")),
  /** American dryseal taper thread: crests meet roots, seals without sealant. */
  NPTF(
      "NPTF",
      ThreadForm.FLAT_60,
      true,
      Cut.BOTH,
      Span.of("1/16", "3"),
      Source.standard("ASME B1.20.3-1976 (R2018)")),
  /** American dryseal taper thread, one thread shorter. */
  PTF_SAE_SHORT(
      "PTF-SAE SHORT",
      ThreadForm.FLAT_60,
      true,
      Cut.BOTH,
      Span.of("1/16", "1"),
      Source.standard("ASME B1.20.3-1976 (R2018)")),
  /** American dryseal straight thread inside soft or ductile fittings, for NPTF. */
  NPSF(
      "NPSF",
      ThreadForm.FLAT_60,
      false,
      Cut.FEMALE_ONLY,
      Span.of("1/16", "1"),
      Source.standard("ASME B1.20.3-1976 (R2018)")),
  /** American dryseal straight thread inside hard fittings, for PTF-SAE SHORT. */
  NPSI(
      "NPSI",
      ThreadForm.FLAT_60,
      false,
      Cut.FEMALE_ONLY,
      Span.of("1/16", "1"),
      Source.standard("ASME B1.20.3-1976 (R2018)")),
  /** R outside and Rc inside: 55°, taper 1:16, seals on the thread with a jointing medium. */
  BSPT(
      "R",
      ThreadForm.ROUND_55,
      true,
      Cut.BOTH,
      Span.of("1/16", "4").without(NominalThreadSize.THREE_AND_A_HALF),
      Source.standard("ISO 7-1, as quoted in other documents")),
  /** Rp: the parallel inside thread of ISO 7-1, which takes R with a jointing medium. */
  RP(
      "Rp",
      ThreadForm.ROUND_55,
      false,
      Cut.FEMALE_ONLY,
      Span.of("1/16", "4").without(NominalThreadSize.THREE_AND_A_HALF),
      Source.standard("ISO 7-1, as quoted in other documents")),
  /** G: 55°, parallel, seals on a face or ring and not on the thread. */
  BSPP(
      "G",
      ThreadForm.ROUND_55,
      false,
      Cut.BOTH,
      Span.of("1/16", "4"),
      Source.standard("ISO 228-1:2003, as quoted in other documents"));

  private enum Cut {
    BOTH,
    FEMALE_ONLY
  }

  /** The sizes a standard has. */
  private record Span(List<NominalThreadSize> sizes) {

    static Span of(String first, String last) {
      NominalThreadSize from = NominalThreadSize.parse(first);
      NominalThreadSize to = NominalThreadSize.parse(last);
      return new Span(Arrays.stream(NominalThreadSize.values())
          .filter(size -> size.compareTo(from) >= 0 && size.compareTo(to) <= 0)
          .toList());
    }

    Span without(NominalThreadSize missing) {
      return new Span(sizes.stream().filter(size -> size != missing).toList());
    }
  }

  private final String symbol;
  private final ThreadForm form;
  private final boolean tapered;
  private final Cut cut;
  private final Span span;
  private final Source source;

  ThreadFamily(String symbol, ThreadForm form, boolean tapered, Cut cut, Span span, Source source) {
    this.symbol = symbol;
    this.form = form;
    this.tapered = tapered;
    this.cut = cut;
    this.span = span;
    this.source = source;
  }

  /** {@return how the standard marks the thread; the inside taper thread of ISO 7-1 is marked Rc} */
  public String symbol() {
    return symbol;
  }

  /**
   * Obtains the letters of a thread of this family.
   *
   * @param gender male or female
   * @return the letters, such as "Rc"
   */
  public String symbol(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return this == BSPT && gender == Gender.FEMALE ? "Rc" : symbol;
  }

  /** {@return the shape of the thread} */
  public ThreadForm form() {
    return form;
  }

  /** {@return the angle between the flanks [°]} */
  public int flankAngleDegrees() {
    return form.flankAngleDegrees();
  }

  /** {@return whether the thread runs on a cone, of taper 1:16} */
  public boolean isTapered() {
    return tapered;
  }

  /**
   * Says whether the standard has the thread outside or inside.
   *
   * @param gender outside or inside
   * @return whether there is such a thread; NPSC, NPSF, NPSI and Rp are only inside
   */
  public boolean has(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return cut == Cut.BOTH || gender == Gender.FEMALE;
  }

  /** {@return the sizes the standard has, as far as 4, smallest first} */
  public List<NominalThreadSize> sizes() {
    return span.sizes();
  }

  /**
   * Refuses a size that this family does not have.
   *
   * @param size the size
   * @throws IllegalArgumentException if the family does not have it
   */
  public void requireSize(NominalThreadSize size) {
    Objects.requireNonNull(size, "size");
    if (!span.sizes().contains(size)) {
      throw new IllegalArgumentException(symbol + " size must be one of " + span.sizes() + ", was "
          + size + "; the nearest is " + nearest(size));
    }
  }

  /**
   * Refuses a gender that this family does not have.
   *
   * @param gender male or female
   * @throws IllegalArgumentException if the family does not have it
   */
  public void requireGender(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    if (!has(gender)) {
      throw new IllegalArgumentException("gender of " + symbol + " must be female, was "
          + gender.label() + "; there is no such thread outside");
    }
  }

  private NominalThreadSize nearest(NominalThreadSize size) {
    List<NominalThreadSize> sizes = span.sizes();
    return sizes.stream()
        .filter(other -> other.compareTo(size) > 0)
        .findFirst()
        .orElse(sizes.get(sizes.size() - 1));
  }

  /** {@return the standard} */
  public Source source() {
    return source;
  }
}
