package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;

import org.airfit.quantity.NominalThreadSize;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** Workings of size 1/4 as a whole: each number by the standard's formula, worked out with a pencil. */
class ThreadWorkingsTest {

  private static final NominalThreadSize QUARTER = NominalThreadSize.ONE_QUARTER;

  @Test
  void r_is_worked_from_the_diameter_of_g_and_its_gauge_length() {
    String source = "    [ISO 7-1, as quoted in other documents (standard)]\n";
    assertThat(BsptThread.of(QUARTER).working(UnitSystem.SI).toText())
        .isEqualTo("R 1/4, basic dimensions\n"
            + "  Pitch, to 0.001 mm\n    P = 25.4 mm / n\n      = 25.4 mm / 19\n      = 1.337 mm\n"
            + source
            + "  Height of the thread, to 0.001 mm\n    h = 0.640327 × P\n"
            + "      = 0.640327 × (1.337 mm)\n      = 0.856 mm\n" + source
            + "  Pitch diameter\n    d2 = d − h\n       = (13.157 mm) − (0.856 mm)\n"
            + "       = 12.301 mm\n" + source
            + "  Minor diameter\n    d1 = d − 2 × h\n       = (13.157 mm) − 2 × (0.856 mm)\n"
            + "       = 11.445 mm\n" + source
            + "  Crest of the first thread\n    c = d − a / 16\n"
            + "      = (13.157 mm) − (6 mm) / 16\n      = 12.782 mm\n" + source
            + "  Crest at the end of the useful thread\n    g = d + f / 16\n"
            + "      = (13.157 mm) + (3.7 mm) / 16\n      = 13.388 mm\n" + source
            + "  Useful thread\n    l = a + f\n      = (6 mm) + (3.7 mm)\n      = 9.7 mm\n" + source
            + "  Gauging tolerance: R 1 turn(s) either way, Rc 1.25 turns.\n");
    assertThat(BsptThread.of(NominalThreadSize.THREE).working(UnitSystem.SI).toText())
        .startsWith("R 3, basic dimensions\n")
        .endsWith("Gauging tolerance: R 1.5 turn(s) either way, Rc 1.5 turns.\n");
  }

  /** TD1 0.445, Td2 of class A 0.125: 13.157 − 0.250, 12.301 − 0.125 and − 0.250, 11.445 + 0.445, 12.301 + 0.125. */
  @Test
  void g_tells_the_limits_of_both_sides() {
    assertThat(BsppThread.of(QUARTER).working(UnitSystem.SI).toText())
        .startsWith("G 1/4, basic dimensions and limits\n")
        .endsWith(
            "  Male: major 12.907 to 13.157 mm, pitch of class A 12.176 to 12.301 mm, of class"
                + " B 12.051 to 12.301 mm.\n"
                + "  Female: minor 11.445 to 11.890 mm, pitch 12.301 to 12.426 mm.\n");
  }

  /** 1.25 × (25.4/19)/16 = 0.1044 mm either way of 11.445 and 12.301. */
  @Test
  void rp_tells_the_tolerance_of_its_diameters() {
    assertThat(RpThread.of(QUARTER).working(UnitSystem.SI).toText())
        .startsWith("Rp 1/4, basic dimensions and limits\n  R 1/4, basic dimensions\n")
        .endsWith("""
              Tolerance of a diameter
                t = w × P / 16
                  = 1.25 × (1.337 mm) / 16
                  = 0.104 mm
                [ISO 7-1, as quoted in other documents (standard)]
              Minor 11.341 to 11.549 mm, pitch 12.197 to 12.405 mm.
            """);
  }

  /** p = 1/18: 0.05556 in, a sixteenth of it 0.00347 in. */
  @Test
  void npt_tells_its_gauging_tolerance() {
    assertThat(NptThread.of(QUARTER).working(UnitSystem.US).toText())
        .startsWith("1/4 NPT, basic dimensions\n  Pitch\n    p = 1 in / n\n")
        .contains("""
            E1 = E0 + L1 / 16
                   = (0.477389 in) + (0.2278 in) / 16
                   = 0.491626 in
            """)
        .endsWith("  Gauging tolerance: one turn either way, 0.05556 in on L1 and 0.00347 in on a"
            + " diameter.\n");
  }

  /** E1 0.491626 in: e = E1 − 0.0013, d = e + 0.649519/18, k = E1 − 0.433013/18, with the widths of the table. */
  @Test
  void npsm_tells_the_limits_of_both_sides() {
    assertThat(NpsmThread.of(QUARTER).working(UnitSystem.US).toText())
        .startsWith("1/4 NPSM, limits\n  1/4 NPT, basic dimensions\n")
        .contains("    e = E1 − a\n      = (0.4916264 in) − (0.0013 in)\n      = 0.490326 in\n")
        .contains("      = 0.526411 in\n")
        .contains("      = 0.467570 in\n")
        .endsWith("  Male: major 0.5174 to 0.5264 in, pitch 0.4859 to 0.4903 in. Female: minor"
            + " 0.4676 to 0.4806 in, pitch 0.4916 to 0.4974 in.\n");
    assertThat(NpsmThread.of(QUARTER).working(UnitSystem.SI).toText())
        .endsWith("  Male: major 13.142 to 13.371 mm, pitch 12.343 to 12.454 mm. Female: minor"
            + " 11.876 to 12.206 mm, pitch 12.487 to 12.635 mm.\n");
  }

  /** E1 ∓ 1.5/18/16 = 0.491626 ∓ 0.005208 in, less 0.8/18. */
  @Test
  void npsc_tells_one_and_a_half_turns_either_way() {
    assertThat(NpscThread.of(QUARTER).working(UnitSystem.SI).toText())
        .startsWith("1/4 NPSC, limits\n  1/4 NPT, basic dimensions\n")
        .contains("      = 0.486418 in\n")
        .contains("      = 0.496835 in\n")
        .contains("      = 0.441974 in\n");
  }

  /** M14x1.5 by ISO 965-1: es 32, Td 236, TD1 300 µm; a hose thread by its tolerance of 0.0170 in. */
  @Test
  void foreign_threads_tell_the_limits_of_their_crests_in_their_own_unit() {
    String iso =
        "    [ISO 68-1, ISO 724 and ISO 965-1, as quoted in a public data file (standard)]\n";
    ForeignThread male = ForeignThread.find("M14x1.5", Gender.MALE).orElseThrow();
    for (UnitSystem units : UnitSystem.values()) {
      assertThat(male.working(units).toText())
          .isEqualTo("M14x1.5 male, limits of the crests\n"
              + "  Largest crest\n    x = d − es\n      = (14 mm) − (0.032 mm)\n"
              + "      = 13.968 mm\n" + iso
              + "  Smallest crest\n    y = d − es − Td\n"
              + "      = (14 mm) − (0.032 mm) − (0.236 mm)\n      = 13.732 mm\n" + iso);
    }
    ForeignThread female = ForeignThread.find("M14x1.5", Gender.FEMALE).orElseThrow();
    assertThat(female.working(UnitSystem.SI).toText())
        .isEqualTo("M14x1.5 female, limits of the crests\n"
            + "  Least minor diameter of the female thread\n    d1 = d − 1.082532 × P\n"
            + "       = (14 mm) − 1.082532 × (1.5 mm)\n       = 12.376 mm\n" + iso
            + "  Largest bore between the crests\n    x = d1 + TD1\n"
            + "      = (12.3762 mm) + (0.3 mm)\n      = 12.676 mm\n" + iso);
    // 1.0625 − 2 × 0.649519/11.5 + 0.0100 = 0.95954, and 0.0170 more
    assertThat(ForeignThread.find("3/4-11.5 NH", Gender.FEMALE)
            .orElseThrow()
            .working(UnitSystem.SI)
            .toText())
        .contains("d1 = d − 2 × 0.649519 × P + a\n")
        .contains("       = 0.95954 in\n")
        .contains("      = 0.97654 in\n");
    // 22.911 − 2 × 0.640327 × 1.814 = 20.588 with h not rounded, 20.587 with h to 0.001 mm
    assertThat(ForeignThread.find("G 5/8", Gender.FEMALE)
            .orElseThrow()
            .working(UnitSystem.SI)
            .toText())
        .contains("d1 = d − 2 × 0.640327 × P\n")
        .contains("mm) + (0.541 mm)\n      = 21.1");
    // 9/16-18 UNF: 0.5625 − 1.082532/18 = 0.50236 to 0.502, and 0.515 by the table
    assertThat(ForeignThread.find("9/16-18 UNF", Gender.FEMALE)
            .orElseThrow()
            .working(UnitSystem.SI)
            .toText())
        .contains("       = 0.502 in\n")
        .contains("      = 0.515 in\n");
  }
}
