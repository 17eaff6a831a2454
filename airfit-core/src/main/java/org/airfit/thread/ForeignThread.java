package org.airfit.thread;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * A parallel thread that is met beside pipe threads and is easily taken for one: metric, unified (flares and ports), G
 * of odd size, hose. It is known so that it can be named and kept apart; what seals beside it tells the end of a part.
 *
 * <pre>
 *   metric, unified:  d2 = d − 0.649519 P             d1 = d − 1.082532 P
 *   male:             crest d − es − Td … d − es      pitch diameter d2 − es − Td2 … d2 − es
 *   female:           crest d1 … d1 + TD1             pitch diameter d2 … d2 + TD2
 *   G:                d2 = d − h, d1 = d − 2 h, h = 0.640327 P, without an allowance es
 *   hose:             crest d − Td … d; inside d1 = d − 1.299038 p … d1 + Td + allowance as tabulated
 * </pre>
 *
 * <table class="striped">
 * <caption>Symbols</caption>
 * <thead><tr><th>symbol</th><th>meaning</th><th>unit</th></tr></thead>
 * <tbody>
 * <tr><td>d, d2, d1</td><td>basic major, pitch and minor diameter</td><td>mm or in</td></tr>
 * <tr><td>P</td><td>pitch</td><td>mm or in</td></tr>
 * <tr><td>es</td><td>by how much the male thread is kept below basic</td><td>mm or in</td></tr>
 * <tr><td>Td, Td2, TD1, TD2</td><td>tolerances of the male major and pitch diameter, of the female minor and pitch
 *     diameter</td><td>mm or in</td></tr>
 * </tbody>
 * </table>
 *
 * <p><b>Which</b> there are: {@link #all}. The designations of the metric and unified threads are those of ISO 261 and
 * of the flares and O-ring ports; those beyond the reference tables are from memory.
 *
 * <p>This class is immutable, thread-safe and value-based. Nobody but the library makes one.
 */
public final class ForeignThread implements NamedThread, Worked {

  private final ForeignGeometry geometry;
  private final Gender gender;

  ForeignThread(ForeignGeometry geometry, Gender gender) {
    this.geometry = geometry;
    this.gender = gender;
  }

  /**
   * Lists the foreign threads that an identification knows.
   *
   * @param gender outside or inside
   * @return the threads: metric, unified, G of odd size, hose, each by diameter
   */
  public static List<ForeignThread> all(Gender gender) {
    Objects.requireNonNull(gender, "gender");
    return ForeignThreads.all().stream()
        .map(geometry -> new ForeignThread(geometry, gender))
        .toList();
  }

  /**
   * Finds a foreign thread by its name.
   *
   * @param name the name, such as "M14x1.5", "9/16-18 UNF", "9/16-18" or "G 5/8"; capitals and blanks do not matter, and
   *     a coarse metric thread may be without its pitch
   * @param gender outside or inside
   * @return the thread, empty if there is none of that name
   */
  public static Optional<ForeignThread> find(String name, Gender gender) {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(gender, "gender");
    return ForeignThreads.find(name).map(geometry -> new ForeignThread(geometry, gender));
  }

  /** {@return the name without the gender, such as "M14x1.5", "9/16-18 UNF" or "G 5/8"} */
  public String name() {
    return geometry.name();
  }

  /** {@return which standard it belongs to} */
  public ForeignStandard standard() {
    return geometry.standard();
  }

  /** {@return what it is used for, such as "37° flare for 3/8 tube, O-ring port"; empty where that is not known} */
  public Optional<String> use() {
    return geometry.use();
  }

  @Override
  public Gender gender() {
    return gender;
  }

  @Override
  public Length pitch() {
    return Length.ofMetres(geometry.pitch());
  }

  @Override
  public double threadsPerInch() {
    return 0.0254 / geometry.pitch();
  }

  @Override
  public int flankAngleDegrees() {
    return geometry.standard().flankAngleDegrees();
  }

  /** {@return false: all of them are parallel} */
  @Override
  public boolean isTapered() {
    return false;
  }

  /** {@return what the crests may measure: the major diameter outside, the minor diameter inside} */
  public Limits crest() {
    return geometry.crest(gender);
  }

  /** {@return what the pitch diameter may measure; empty for hose threads, of which only the basic one was seen} */
  public Optional<Limits> pitchDiameter() {
    return geometry.pitchDiameter(gender);
  }

  @Override
  public Source source() {
    return geometry.source();
  }

  @Override
  public String label() {
    return geometry.name() + " " + gender.label();
  }

  /**
   * Tells how the limits of the crests follow from the standard.
   *
   * @param units the units to show numbers in
   */
  @Override
  public Working working(UnitSystem units) {
    return ForeignFormulas.working(label(), gender, geometry, units);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof ForeignThread that
        && geometry.name().equals(that.geometry.name())
        && gender == that.gender;
  }

  @Override
  public int hashCode() {
    return Objects.hash(geometry.name(), gender);
  }

  /** {@return the {@link #label()}, such as "M14x1.5 male"} */
  @Override
  public String toString() {
    return label();
  }
}
