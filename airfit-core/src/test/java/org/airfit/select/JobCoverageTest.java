package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.joint.End;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class JobCoverageTest {

  private static final AirState OUTSIDE =
      AirState.of(AbsolutePressure.ofBar(1.0), Temperature.ofCelsius(20.0));

  private static Range<GaugePressure> bar(double least, double most) {
    return new Range<>(GaugePressure.ofBar(least), GaugePressure.ofBar(most));
  }

  private static Range<Length> metres(double least, double most) {
    return new Range<>(Length.ofMetres(least), Length.ofMetres(most));
  }

  private static JobMix.Tool tool(String name, double weight, String inlet) {
    return new JobMix.Tool(
        name,
        weight,
        new Range<>(FreeAirFlow.ofAnrLitresPerSecond(8.0), FreeAirFlow.ofAnrLitresPerSecond(9.0)),
        GaugePressure.ofBar(5.5),
        GaugePressure.ofBar(9.0),
        End.parse(inlet));
  }

  private static JobMix.Place place(
      String name, double weight, String outlet, Range<Length> reach) {
    return new JobMix.Place(
        name, weight, bar(7.0, 7.5), End.parse(outlet), reach, Environment.INDOORS);
  }

  private static JobMix mix(int jobs, List<JobMix.Tool> tools, List<JobMix.Place> places) {
    return new JobMix(7L, jobs, tools, places, OUTSIDE, JobMix.METRES);
  }

  private static final JobMix.Tool GRINDER = tool("grinder", 1.0, "1/4 NPT female");
  private static final JobMix.Place NEAR = place("near", 1.0, "3/8 NPT male", metres(5.0, 10.0));

  /** The parts of the shelf, of which the narrow socket is left out, so that each gap shows. */
  private static List<Part> parts() {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    parts.removeIf(part -> part.id().equals("narrow"));
    parts.replaceAll(part -> part.id().equals("hose plug")
        ? Shelf.plug(Shelf.steel("hose plug"), "finch", "3/8 NPT female")
        : part);
    return parts;
  }

  @Test
  void a_mix_that_the_list_is_made_for_is_solved() {
    JobCoverage found =
        JobCoverage.of(Catalogue.of(parts()), mix(12, List.of(GRINDER), List.of(NEAR)));
    assertThat(found.outcomes()).hasSize(12).containsOnly(JobCoverage.Outcome.SOLVED);
    assertThat(found.gaps()).isEmpty();
    assertThat(found.inTheWay()).isEmpty();
    assertThat(found.inWords().get(0))
        .isEqualTo("Every rule is met in 12 of 12 jobs, 100.0 % (75.8 % to"
            + " 100.0 % with 95 % confidence).");
  }

  /** Half the jobs are farther off than the hose of 10 m reaches: a hose of 20 m is what lacks. */
  @Test
  void a_hose_that_is_too_short_for_some_places_is_the_gap() {
    JobMix.Place far = place("far", 1.0, "3/8 NPT male", metres(16.0, 19.0));
    JobMix mix = mix(20, List.of(GRINDER), List.of(NEAR, far));
    JobCoverage found = JobCoverage.of(Catalogue.of(parts()), mix);
    List<Integer> away = mix.drawn().stream()
        .filter(job -> job.place().equals("far"))
        .map(JobMix.Job::number)
        .toList();
    assertThat(away).hasSizeBetween(5, 15);
    assertThat(found.share(JobCoverage.Outcome.NO_PROPOSAL))
        .isEqualTo(new JobShare(away.size(), 20));
    CatalogueGap gap = found.gaps().get(0);
    assertThat(gap.kind()).isEqualTo(CatalogueGap.Kind.HOSE);
    assertThat(gap.jobs()).isEqualTo(away);
    assertThat(((Part.Hose) gap.part()).longest().metres()).isEqualTo(20.0);
    assertThat(gap.inWords()).endsWith("20 m, 3/8 NPT male at both ends");
    assertThat(found.inTheWay())
        .first()
        .isEqualTo(new JobCoverage.InTheWay(Rule.HOSE_REACHES, away.size()));
    // solved again, by nothing of the class that is tested
    List<Part> fuller = new ArrayList<>(parts());
    fuller.add(gap.part());
    for (JobMix.Job job : mix.drawn()) {
      Selection solved = Selection.of(job.requirement(), Catalogue.of(fuller));
      assertThat(solved).isInstanceOf(Selection.Proposals.class);
      assertThat(((Selection.Proposals) solved).best().open()).isEmpty();
    }
  }

  /** A list without hoses gets one with the ends that its own plugs and sockets take, NPT or R and G. */
  @ParameterizedTest
  @CsvSource({
    "3/8 NPT female, 3/8 NPT male, 1/4 NPT",
    "Rp 3/8 female, R 3/8 male, Rp 1/4",
    "G 3/8 female, G 3/8 male, G 1/4"
  })
  void a_list_without_hoses_lacks_one_with_the_ends_of_its_own_parts(
      String end, String hoseEnd, String tool) {
    List<Part> parts = List.of(
        Shelf.socket(Shelf.steel("wide"), "finch", end, 9.0),
        Shelf.plug(Shelf.steel("hose plug"), "finch", end),
        Shelf.plug(Shelf.steel("tool plug"), "finch", tool.replace("Rp", "R") + " male"));
    JobMix mix = mix(
        4,
        List.of(tool("grinder", 1.0, tool + " female")),
        List.of(place("near", 1.0, hoseEnd, metres(5.0, 10.0))));
    JobCoverage found = JobCoverage.of(Catalogue.of(parts), mix);
    assertThat(found.outcomes()).containsOnly(JobCoverage.Outcome.NO_PROPOSAL);
    CatalogueGap gap = found.gaps().get(0);
    assertThat(gap.kind()).isEqualTo(CatalogueGap.Kind.HOSE);
    assertThat(gap.jobs()).containsExactly(1, 2, 3, 4);
    assertThat(gap.inWords()).endsWith("10 m, " + End.parse(hoseEnd).label() + " at both ends");
  }

  @Test
  void a_list_without_any_part_has_no_gap_and_no_proposal() {
    JobCoverage found =
        JobCoverage.of(Catalogue.of(List.of()), mix(5, List.of(GRINDER), List.of(NEAR)));
    assertThat(found.outcomes()).hasSize(5).containsOnly(JobCoverage.Outcome.NO_PROPOSAL);
    assertThat(found.gaps()).isEmpty();
  }

  @Test
  void an_adapter_is_the_gap_where_an_outlet_has_another_size() {
    JobMix.Place other = place("other", 1.0, "1/2 NPT female", metres(5.0, 10.0));
    JobCoverage found =
        JobCoverage.of(Catalogue.of(parts()), mix(6, List.of(GRINDER), List.of(other)));
    assertThat(found.outcomes()).containsOnly(JobCoverage.Outcome.NO_PROPOSAL);
    CatalogueGap gap = found.gaps().get(0);
    assertThat(gap.kind()).isEqualTo(CatalogueGap.Kind.ADAPTER);
    assertThat(gap.jobs()).containsExactly(1, 2, 3, 4, 5, 6);
    assertThat(gap.inWords()).contains("1/2 NPT male", "3/8 NPT male");
    assertThat(found.inTheWay())
        .first()
        .extracting(JobCoverage.InTheWay::rule)
        .isEqualTo(Rule.ENDS_MATE);
  }

  @Test
  void a_rating_that_nobody_told_is_the_gap() {
    List<Part> parts = parts();
    parts.replaceAll(part -> part.id().equals("10 mm hose")
        ? part.withFacts(PartFacts.of("10 mm hose", "hose").withMaterial(Material.HARDENED_STEEL))
        : part);
    JobCoverage found =
        JobCoverage.of(Catalogue.of(parts), mix(5, List.of(GRINDER), List.of(NEAR)));
    assertThat(found.outcomes()).containsOnly(JobCoverage.Outcome.NO_PROPOSAL);
    CatalogueGap gap = found.gaps().get(0);
    assertThat(gap.kind()).isEqualTo(CatalogueGap.Kind.RATING);
    assertThat(gap.inWords()).isEqualTo("Rating of hose (10 mm hose), if it is 7.5 bar(g) or more");
    assertThat(gap.share()).isEqualTo(new JobShare(5, 5));
  }

  /** C 3 with b from 0 to 0.528: whether 8 to 9 L/s get through with enough pressure left depends on b. */
  @Test
  void a_b_that_nobody_told_is_the_gap() {
    List<Part> parts = parts();
    parts.replaceAll(part -> part instanceof Part.Socket socket
        ? new Part.Socket(
            socket.facts(),
            Set.of("finch"),
            socket.end(),
            CapacityRange.ofConductance(SonicConductance.ofCubicDecimetresPerSecondBar(2.6)))
        : part);
    JobCoverage found =
        JobCoverage.of(Catalogue.of(parts), mix(5, List.of(GRINDER), List.of(NEAR)));
    assertThat(found.outcomes()).contains(JobCoverage.Outcome.OPEN);
    assertThat(found.gaps()).anySatisfy(gap -> {
      assertThat(gap.kind()).isEqualTo(CatalogueGap.Kind.AIR_FIGURE);
      assertThat(gap.part().id()).isEqualTo("wide");
      assertThat(gap.inWords()).contains("if it lies at the top of what is open");
    });
  }

  @Test
  void what_no_part_can_mend_has_no_gap() {
    JobMix.Tool hungry = new JobMix.Tool(
        "press",
        1.0,
        Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(8.0)),
        GaugePressure.ofBar(8.0),
        GaugePressure.ofBar(9.0),
        End.parse("1/4 NPT female"));
    JobCoverage found =
        JobCoverage.of(Catalogue.of(parts()), mix(3, List.of(hungry), List.of(NEAR)));
    assertThat(found.outcomes()).containsOnly(JobCoverage.Outcome.NO_PROPOSAL);
    assertThat(found.gaps()).isEmpty();
    assertThat(found.inTheWay()).extracting(JobCoverage.InTheWay::rule).contains(Rule.AIR_AT_TOOL);
  }

  @Test
  void nothing_depends_on_the_order_of_the_catalogue() {
    JobMix.Place far = place("far", 1.0, "1/2 NPT female", metres(16.0, 19.0));
    JobMix mix = mix(10, List.of(GRINDER), List.of(NEAR, far));
    List<Part> turned = new ArrayList<>(parts());
    Collections.reverse(turned);
    assertThat(JobCoverage.of(Catalogue.of(turned), mix))
        .isEqualTo(JobCoverage.of(Catalogue.of(parts()), mix));
  }

  /** Shares of 2000 draws of weights 3 : 1, by four standard deviations of a binomial: 0.75 ± 0.0387. */
  @Test
  void jobs_come_as_their_weights_say_and_from_within_their_ranges() {
    int first = 0;
    int all = 0;
    double lowest = 100.0;
    double farthest = 0.0;
    for (long seed = 0; seed < 5; seed++) {
      JobMix mix = new JobMix(
          seed,
          400,
          List.of(tool("a", 3.0, "1/4 NPT female"), tool("b", 1.0, "3/8 NPT female")),
          List.of(NEAR),
          OUTSIDE,
          JobMix.METRES);
      assertThat(mix.drawn()).isEqualTo(mix.drawn());
      for (JobMix.Job job : mix.drawn()) {
        all++;
        first += job.tool().equals("a") ? 1 : 0;
        Requirement asked = job.requirement();
        double supply = asked.toOutlet().stillAir().pressure().bar() - 1.0;
        assertThat(supply).isBetween(7.0, 7.5);
        lowest = Math.min(lowest, supply);
        double reach =
            ((Slot.Hose) asked.layout().slot("hose").orElseThrow()).reach().metres();
        assertThat(reach).isBetween(5.0, 10.0);
        farthest = Math.max(farthest, reach);
        assertThat(asked.demand().litresPerSecond()).isBetween(8.0, 9.0);
        assertThat(asked.highest()).isEqualTo(GaugePressure.ofBar(7.5));
      }
    }
    assertThat(first / (double) all).isCloseTo(0.75, within(4.0 * Math.sqrt(0.75 * 0.25 / 2000.0)));
    assertThat(lowest).isLessThan(7.01);
    assertThat(farthest).isGreaterThan(9.95);
  }

  @Test
  void as_many_gaps_are_tried_as_is_said() {
    assertThat(GapCandidates.mostTried()).isEqualTo(JobCoverage.MOST_CANDIDATES);
  }

  @Test
  void a_mix_out_of_range_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> mix(0, List.of(GRINDER), List.of(NEAR)))
        .withMessage("jobs to draw must be in [1, 400], were 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> mix(401, List.of(GRINDER), List.of(NEAR)));
    assertThat(mix(400, List.of(GRINDER), List.of(NEAR)).jobs()).isEqualTo(400);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> mix(1, List.of(), List.of(NEAR)))
        .withMessageContaining("at least one tool");
    for (double weight : new double[] {0.0, -1.0, Double.NaN, 2.0e6}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> tool("a", weight, "1/4 NPT female"))
          .withMessageContaining("weight of tool \"a\" must be in (0, 1e6]");
    }
    assertThatIllegalArgumentException().isThrownBy(() -> tool(" ", 1.0, "1/4 NPT female"));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new JobMix.Tool(
            "a",
            1.0,
            Range.exactly(FreeAirFlow.ofAnrLitresPerSecond(8.0)),
            GaugePressure.ofBar(6.0),
            GaugePressure.ofBar(5.9),
            End.parse("1/4 NPT female")))
        .withMessageContaining("what it may see at least what it needs");
  }
}
