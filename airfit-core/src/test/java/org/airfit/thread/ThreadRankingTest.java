package org.airfit.thread;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.airfit.quantity.Length;
import org.airfit.thread.ThreadIdentification.SettlingReading;
import org.junit.jupiter.api.Test;

/** How chances become a verdict, and what a doubt asks for. */
class ThreadRankingTest {

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static ThreadReadings quarterNpt() {
    return ThreadReadings.ofMale(mm(13.25)).withLastCrest(mm(13.71));
  }

  /** Bayes' rule over both sides, and none of these: each weight over the sum of all. */
  @Test
  void chances_are_the_weights_over_their_sum() {
    ThreadReadings r = ThreadReadings.ofMale(mm(20.9)).withPitches(mm(9.07), 5);
    ThreadRanking ranking = ThreadRanking.of(r);
    double sum = ThreadHypothesis.unknownWeight(r);
    for (Gender gender : Gender.values()) {
      for (ThreadHypothesis each : ThreadHypothesis.all(gender)) {
        sum += each.weight(r);
      }
    }
    assertThat(ranking.evidence()).isCloseTo(sum, within(1.0e-12 * sum));
    assertThat(ranking.unknownProbability())
        .isCloseTo(ThreadHypothesis.unknownWeight(r) / sum, within(1.0e-15));
    assertThat(ranking.candidates().get(0).thread()).isEqualTo(ranking.best().thread());
    assertThat(ranking.candidates().get(0).probability())
        .isCloseTo(ranking.best().weight(r) / sum, within(1.0e-12));
    assertThat(ranking.candidates())
        .hasSize(ThreadHypothesis.all(Gender.MALE).size()
            + ThreadHypothesis.all(Gender.FEMALE).size());
    assertThat(ranking.restProbability())
        .isCloseTo(1.0 - ranking.candidates().get(0).probability(), within(1.0e-12));
    assertThat(ranking.contenders())
        .containsExactlyElementsOf(
            ranking.candidates().stream().filter(c -> c.probability() >= 0.01).toList())
        .hasSizeGreaterThan(1);
  }

  @Test
  void the_nearest_thread_is_one_of_the_pipe_threads_of_its_side() {
    ThreadRanking far = ThreadRanking.of(ThreadReadings.ofFemale(mm(150.0)));
    assertThat(far.nearest().label()).isEqualTo("G 4 female");
    // at their largest NPSM 3/8 has 16.807 mm, NPT 3/8 16.762, R 3/8 16.346 and G 3/8 16.662 mm
    ThreadRanking npsm =
        ThreadRanking.of(ThreadReadings.ofMale(mm(17.3)).withPitches(mm(7.0556), 5));
    assertThat(npsm.nearest().label()).isEqualTo("3/8 NPSM male");
    assertThat(npsm.lookalike().family())
        .isIn(ThreadFamily.NPT, ThreadFamily.BSPT, ThreadFamily.BSPP);
    assertThat(ThreadRanking.of(ThreadReadings.ofMale(mm(9.6)).withThreadsPerInch(28.0))
            .lookalike()
            .label())
        .isEqualTo("G 1/8 male");
    assertThat(ThreadRanking.of(ThreadReadings.ofMale(mm(12.78)).withThreadsPerInch(19.0))
            .lookalike()
            .label())
        .isEqualTo("R 1/4 male");
    assertThat(ThreadRanking.of(ThreadReadings.ofMale(mm(13.25)).withThreadsPerInch(18.0))
            .lookalike()
            .label())
        .isEqualTo("1/4 NPT male");
  }

  /** 95 times in a hundred, a pitch, and every reading fits: without any of the three nothing is called by its name. */
  @Test
  void a_firm_answer_needs_the_chance_the_pitch_and_the_fit() {
    ThreadRanking firm = ThreadRanking.of(quarterNpt().withPitches(mm(7.06), 5));
    assertThat(firm.verdict()).isEqualTo(ThreadVerdict.IDENTIFIED);
    assertThat(firm.foreign()).isEmpty();
    assertThat(firm.explanations()).isEmpty();
    assertThat(ThreadRanking.of(quarterNpt()).verdict()).isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(ThreadRanking.of(ThreadReadings.ofMale(mm(21.0), mm(9.07), 5)).verdict())
        .isEqualTo(ThreadVerdict.AMBIGUOUS);
    assertThat(ThreadRanking.of(quarterNpt().withPitches(mm(7.06), 5).withTaperSeen(false))
            .verdict())
        .isEqualTo(ThreadVerdict.AMBIGUOUS);
    ThreadRanking foreign =
        ThreadRanking.of(ThreadReadings.ofMale(mm(13.9), mm(7.5), 5).withLastCrest(mm(13.9)));
    assertThat(foreign.verdict()).isEqualTo(ThreadVerdict.FOREIGN);
    assertThat(foreign.foreign().orElseThrow().name()).isEqualTo("M14x1.5");
    assertThat(ThreadRanking.of(ThreadReadings.ofFemale(mm(150.0))).verdict())
        .isEqualTo(ThreadVerdict.NO_MATCH);
  }

  /** Whatever the chance, at 95 in a hundred it is firm and just below it is not: one flank angle moves it across. */
  @Test
  void the_chance_that_decides_is_ninety_five_in_a_hundred() {
    boolean firmSeen = false;
    boolean openSeen = false;
    for (double angle = 57.6; angle < 60.0; angle += 0.05) {
      ThreadRanking ranking = ThreadRanking.of(ThreadReadings.ofMale(mm(20.80))
          .withLastCrest(mm(20.80))
          .withPitches(mm(9.07), 5)
          .withFlankAngle(angle, 1.0));
      boolean firm = ranking.verdict() == ThreadVerdict.IDENTIFIED;
      assertThat(firm)
          .as("at %s°: %s", angle, ranking.candidates().get(0))
          .isEqualTo(ranking.candidates().get(0).probability() >= 0.95);
      firmSeen |= firm;
      openSeen |= !firm;
    }
    assertThat(firmSeen).isTrue();
    assertThat(openSeen).isTrue();
  }

  @Test
  void at_most_three_slips_are_told() {
    ThreadIdentification answer = ThreadIdentification.of(ThreadReadings.ofMale(mm(26.82)));
    assertThat(answer.explanations())
        .extracting(SlipCandidate::toString)
        .contains("R 3/4 male if the diameter was not taken at the first full thread")
        .hasSize(3);
  }

  @Test
  void a_doubt_asks_for_what_would_settle_it() {
    assertThat(asked(ThreadReadings.ofMale(mm(13.6)).withThreadsPerInch(18.0)))
        .containsExactly(
            SettlingReading.PITCH, SettlingReading.FIRST_CREST, SettlingReading.LAST_CREST);
    // taper or not is settled by the last crest, 55° or 60° by the flanks, both are asked while
    // open
    ThreadReadings bore = ThreadReadings.ofFemale(mm(18.7)).withPitch(mm(1.82), mm(0.02));
    assertThat(asked(bore))
        .containsExactly(
            SettlingReading.PITCH, SettlingReading.LAST_CREST, SettlingReading.FLANK_ANGLE);
    assertThat(asked(bore.withLastCrest(mm(18.7))))
        .containsExactly(SettlingReading.PITCH, SettlingReading.FLANK_ANGLE);
    assertThat(asked(bore.withFlankAngle(55.0, 0.5)))
        .containsExactly(SettlingReading.PITCH, SettlingReading.LAST_CREST);
    assertThat(asked(quarterNpt().withPitches(mm(7.06), 5).withThreadsPerInch(19.0)))
        .containsExactly(SettlingReading.PITCH_AGAIN);
    // G 5/8 inside measures as G 1/2 does outside, with the same pitch and flanks
    ThreadReadings inside = ThreadReadings.ofFemale(mm(20.85))
        .withLastCrest(mm(20.85))
        .withPitches(mm(9.07), 5)
        .withFlankAngle(55.0, 0.5);
    assertThat(asked(inside)).containsExactly(SettlingReading.SIDE);
    assertThat(ThreadIdentification.of(inside).inWords())
        .startsWith("ambiguous between G 5/8 female (")
        .contains(", G 1/2 male (")
        .endsWith("; look again whether it is a male or a female thread: a male one is measured"
            + " over its crests, a female one between them");
    // Rp 1/2 and G 1/2 inside differ by a few hundredths of their bore
    assertThat(asked(ThreadReadings.ofFemale(mm(18.70))
            .withLastCrest(mm(18.70))
            .withPitches(mm(9.07), 5)
            .withFlankAngle(55.0, 0.5)))
        .containsExactly(SettlingReading.CLOSER_DIAMETER);
    // three metric threads of one diameter differ by their pitches only
    assertThat(asked(ThreadReadings.ofMale(mm(16.0)).withLastCrest(mm(15.9))))
        .containsExactly(SettlingReading.PITCH);
  }

  private static List<SettlingReading> asked(ThreadReadings readings) {
    return ThreadIdentification.of(readings).settlingReadings();
  }

  @Test
  void a_caution_goes_with_all_that_is_not_identified() {
    assertThat(ThreadIdentification.of(quarterNpt().withPitches(mm(7.06), 5)).cautions())
        .isEmpty();
    assertThat(ThreadIdentification.of(quarterNpt()).cautions())
        .singleElement()
        .satisfies(caution -> {
          assertThat(caution.title()).isEqualTo("Do not try it under pressure");
          assertThat(caution.text())
              .isEqualTo("A thread that is not known must not be put under pressure with one that"
                  + " seems to fit: threads of two standards can run in, hold for a while and come"
                  + " apart.");
        });
    assertThat(ThreadIdentification.sources())
        .contains(ThreadFamily.NPT.source(), ForeignStandard.HOSE.source())
        .hasSize(6 + 4);
  }
}
