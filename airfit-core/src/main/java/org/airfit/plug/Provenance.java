package org.airfit.plug;

import java.util.Objects;

/**
 * Where a profile's dimensions come from, which decides how firmly an answer may speak.
 *
 * <p>Only dimensions entered from a standard, or measured on at least {@value #PIECES_TO_IDENTIFY} pieces, can say
 * <em>identified</em>. The order is by trust, strongest first.
 *
 * @param kind what kind of place they come from
 * @param pieces how many pieces were measured; 0 for anything not measured
 */
public record Provenance(Kind kind, int pieces) implements Comparable<Provenance> {

  /** Fewer measured pieces than this do not show the spread of a family. This project's rule, no source. */
  public static final int PIECES_TO_IDENTIFY = 5;

  /** Kinds of places, strongest first. */
  public enum Kind {
    /** Typed in by the user from a standard he holds. */
    STANDARD_ENTERED("entered from a standard"),
    /** Measured by the user on known plugs. */
    USER_MEASURED("measured by the user"),
    /** Remembered or copied, and checked by nobody. */
    NOMINAL_UNVERIFIED("nominal and unverified"),
    /** Invented; belongs to no real plug. */
    SYNTHETIC("invented, of no real plug");

    private final String label;

    Kind(String label) {
      this.label = label;
    }

    /** {@return the kind in words} */
    public String label() {
      return label;
    }
  }

  /**
   * Checks that pieces are counted for measured dimensions and for no others.
   *
   * @param kind what kind of place they come from
   * @param pieces how many pieces were measured; 0 for anything not measured
   * @throws IllegalArgumentException if the count does not suit the kind
   */
  public Provenance {
    Objects.requireNonNull(kind, "kind");
    if (kind == Kind.USER_MEASURED ? pieces < 1 : pieces != 0) {
      throw new IllegalArgumentException("pieces must be "
          + (kind == Kind.USER_MEASURED
              ? "at least 1 for measured dimensions"
              : "0 unless dimensions were measured")
          + ", was " + pieces);
    }
  }

  /** {@return the provenance of dimensions typed in from a standard; cite it in the profile's source} */
  public static Provenance standardEntered() {
    return new Provenance(Kind.STANDARD_ENTERED, 0);
  }

  /**
   * Obtains the provenance of dimensions the user measured.
   *
   * @param pieces how many known plugs were measured, at least 1
   * @return the provenance
   * @throws IllegalArgumentException if {@code pieces} is less than 1
   */
  public static Provenance userMeasured(int pieces) {
    return new Provenance(Kind.USER_MEASURED, pieces);
  }

  /** {@return the provenance of remembered or copied sizes} */
  public static Provenance nominalUnverified() {
    return new Provenance(Kind.NOMINAL_UNVERIFIED, 0);
  }

  /** {@return the provenance of invented sizes} */
  public static Provenance synthetic() {
    return new Provenance(Kind.SYNTHETIC, 0);
  }

  /** {@return whether an answer resting on this may say "identified"} */
  public boolean canIdentify() {
    return kind == Kind.STANDARD_ENTERED
        || (kind == Kind.USER_MEASURED && pieces >= PIECES_TO_IDENTIFY);
  }

  /**
   * Obtains the weaker of two: what an answer that used both may claim.
   *
   * @param other the other provenance
   * @return whichever deserves less trust
   */
  public Provenance weaker(Provenance other) {
    Objects.requireNonNull(other, "other");
    return compareTo(other) >= 0 ? this : other;
  }

  /** Orders by trust, strongest first; among measured dimensions more pieces are stronger. */
  @Override
  public int compareTo(Provenance other) {
    Objects.requireNonNull(other, "other");
    int byKind = kind.compareTo(other.kind);
    return byKind != 0 ? byKind : Integer.compare(other.pieces, pieces);
  }

  /** {@return the provenance in words, such as "measured by the user on 5 pieces"} */
  @Override
  public String toString() {
    return kind == Kind.USER_MEASURED
        ? kind.label + " on " + pieces + (pieces == 1 ? " piece" : " pieces")
        : kind.label;
  }
}
