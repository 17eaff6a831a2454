package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.BsppThread;
import org.airfit.thread.BsptThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NptThread;
import org.airfit.thread.PipeThread;
import org.airfit.thread.PipeThreads;
import org.airfit.thread.ThreadFamily;
import org.airfit.thread.ThreadSection;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A male thread in a female one it was not made for: the model's limits by hand, and what is said of them. */
class ThreadMismatchTest {

  private static final Length END = Length.ofMetres(0.0);

  private static ThreadMismatch of(ThreadFamily male, ThreadFamily female, String size) {
    NominalThreadSize named = NominalThreadSize.parse(size);
    return new ThreadMismatch(
        PipeThreads.of(male, named).orElseThrow(), PipeThreads.of(female, named).orElseThrow());
  }

  /**
   * By hand, pitch 1.4 mm and tan α 0.55: c tan α = 0.055 mm; a taper takes 0.0240625 mm of it in a turn, two take
   * 0.048125 mm; 16 × 0.1 mm / 1.4 mm = 1.142857 turns until the flanks meet.
   */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.2, 0.05, 0, 1.1",
    "0.1, 0.2, 0.05, 1, 0.742616",
    "0.1, 0.2, 0.05, 2, 0.560510",
    "0.1, 0.2, 0, 1, 1.142857",
    "0.1, 0.2, 0, 2, 1.142857",
    "0.1, 0.05, 0, 1, 0.571429",
    "0.1, 0.05, 0.2, 1, 0.245467",
    "0.1, 0.05, 0, 0, Infinity",
    "0, 0.2, 0.05, 1, 0",
    "0, 0.2, 0, 0, 0",
    "0.1, 0, 0, 0, 0",
    "0.1, 0, 0.05, 1, 0",
    "-0.1, 0.2, 0.05, 0, 0",
    "0.1, -0.2, 0, 0, 0"
  })
  void the_first_thing_that_meets_ends_the_turns(
      double clearance, double tightest, double pitchDifference, int tapers, double turns) {
    double ours = MismatchKernels.turns(clearance, tightest, 1.4, pitchDifference, 0.55, tapers);
    if (Double.isInfinite(turns) || turns == 0.0) {
      assertThat(ours).isEqualTo(turns);
    } else {
      assertThat(ours).isCloseTo(turns, within(1.0e-6));
    }
  }

  /** The turns and the 0.09 mm are those of npt_bsp_mixups.csv; 0.45 mm is 3.968 in less 100.33 mm. */
  @ParameterizedTest(name = "{0} in {1} {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "NPT | BSPP | 1/16 | It starts, and jams after about 1.4 turns.",
        "NPT | BSPP | 1/8 | It does not start: at basic size the male is too large on the flanks by 0.09 mm.",
        "NPT | BSPP | 1/4 | It starts only if its crests are cut short, and jams within about 0.7 turns.",
        "NPT | BSPP | 1/2 | At the same threads per inch it runs in for about 2.1 turns and looks right.",
        "NPT | BSPP | 1 | It starts loose and runs in for about 3.7 turns.",
        "NPT | BSPP | 1-1/2 | It starts, and jams after about 2.8 turns.",
        "BSPT | NPT | 1/8 | It starts loose and runs in for about 5.0 turns.",
        "BSPT | NPT | 1/2 | At the same threads per inch it runs in for about 1.8 turns and looks right.",
        "BSPT | NPT | 1 | It starts, and jams after about 0.4 turns.",
        "NPSM | BSPP | 1/2 | At the same threads per inch it runs in all the way and looks right.",
        "NPSM | BSPP | 3-1/2 | It does not start: at basic size the male is too large over the crests by 0.45 mm.",
        "BSPP | NPT | 1/2 | At basic size it does not start, but loose pieces within their tolerances do, and jam."
      })
  void a_mix_up_reads_as_what_happens(
      ThreadFamily male, ThreadFamily female, String size, String sentence) {
    assertThat(of(male, female, size).inWords()).isEqualTo(sentence);
  }

  /**
   * Said with diameters instead of clearances: the smallest male the standards allow goes into the widest female if it
   * is smaller on the flanks, over its crests and at its roots.
   */
  @Test
  void loose_pieces_start_where_the_smallest_male_is_smaller_than_the_widest_female_everywhere() {
    int starts = 0;
    int all = 0;
    for (PipeThread male : threads(Gender.MALE)) {
      for (PipeThread female : threads(Gender.FEMALE)) {
        boolean near = Math.abs(male.size().compareTo(female.size())) <= 1;
        if (near) {
          boolean wanted = startsLoose(male, female);
          assertThat(new ThreadMismatch(male, female).startsAtTheLimits())
              .as("%s in %s", male, female)
              .isEqualTo(wanted);
          starts += wanted ? 1 : 0;
          all++;
        }
      }
    }
    assertThat(starts).isBetween(all / 5, all - all / 5);
  }

  private static List<PipeThread> threads(Gender gender) {
    List<PipeThread> threads = new ArrayList<>();
    for (ThreadFamily family : ThreadFamily.values()) {
      if (family.has(gender)) {
        family.sizes().forEach(size -> PipeThreads.of(family, size).ifPresent(threads::add));
      }
    }
    return threads;
  }

  private static boolean startsLoose(PipeThread male, PipeThread female) {
    ThreadSection end = male.section(Gender.MALE, END);
    ThreadSection mouth = female.section(Gender.FEMALE, END);
    double maleLess = male.looseness(Gender.MALE).millimetres();
    double femaleMore = female.looseness(Gender.FEMALE).millimetres();
    double flanksOfMale = end.pitch().millimetres() - maleLess;
    double flanksOfFemale = mouth.pitch().millimetres() + femaleMore;
    double crestOfMale = male.firstCrest(Gender.MALE).least().millimetres();
    double rootOfFemale =
        mouth.major().millimetres() + (female.family().isTapered() ? femaleMore : 0.0);
    double rootOfMale = end.minor().millimetres() - maleLess;
    double crestOfFemale = female.firstCrest(Gender.FEMALE).most().millimetres();
    return flanksOfMale < flanksOfFemale
        && crestOfMale < rootOfFemale
        && rootOfMale < crestOfFemale;
  }

  /** G 1/4: 13.157 and 11.445 mm; NPT 1/4 at its end: 13.255 and 10.997 mm, as the tables of both have them. */
  @Test
  void the_working_tells_both_gaps_of_the_crests_and_which_of_them_counts() {
    ThreadMismatch quarter = of(ThreadFamily.NPT, ThreadFamily.BSPP, "1/4");
    assertThat(quarter.working().toText())
        .contains("Crest under root: -0.098 mm. Root under crest: 0.448 mm. The smaller is q.")
        .contains(quarter.inWords() + " It is never relied on to seal.")
        .doesNotContain("Turns until");
    assertThat(quarter.working(UnitSystem.US).toText())
        .contains("Crest under root: -0.004 in. Root under crest: 0.018 in. The smaller is q.");
    assertThat(quarter.working().answers()).hasSize(1);
  }

  /** R 1/4 in NPT 1/4, all from the table: c 0.561 mm, q 0.288 mm, p 25.4/19 mm. */
  @Test
  void the_working_of_one_that_starts_tells_all_three_limits_and_names_them_as_answers() {
    ThreadMismatch mix = new ThreadMismatch(
        BsptThread.of(NominalThreadSize.ONE_QUARTER), NptThread.of(NominalThreadSize.ONE_QUARTER));
    String text = mix.working().toText();
    assertThat(text)
        .contains("Clearance on the pitch diameter", "Turns until the flanks meet")
        .contains("Turns until crest meets root", "Play that two tapers take away in a turn")
        .contains("Turns until the pitch difference has used up the play");
    assertThat(mix.working().answers()).hasSize(4);
    ThreadMismatch one = of(ThreadFamily.NPT, ThreadFamily.BSPP, "1");
    assertThat(one.working().toText()).contains("Play that one taper takes away in a turn");
    ThreadMismatch same = of(ThreadFamily.NPT, ThreadFamily.BSPP, "1/2");
    assertThat(same.working().answers()).as("no pitch difference").hasSize(3);
    ThreadMismatch parallel = of(ThreadFamily.NPSM, ThreadFamily.BSPP, "1");
    assertThat(parallel.working().toText()).doesNotContain("taper", "flanks meet");
    assertThat(parallel.working().answers()).hasSize(2);
  }

  @Test
  void a_longer_male_pitch_counts_as_much_as_a_shorter_one() {
    ThreadMismatch longer = of(ThreadFamily.NPT, ThreadFamily.BSPP, "1/4");
    assertThat(longer.pitchDifference().millimetres())
        .isCloseTo(25.4 / 18.0 - 25.4 / 19.0, within(1.0e-12));
    ThreadMismatch shorter = new ThreadMismatch(
        BsppThread.of(NominalThreadSize.ONE_QUARTER), NptThread.of(NominalThreadSize.ONE_QUARTER));
    assertThat(shorter.pitchDifference().millimetres())
        .isCloseTo(25.4 / 19.0 - 25.4 / 18.0, within(1.0e-12));
    assertThat(shorter.isSamePitch()).isFalse();
  }
}
