package org.airfit.jobsheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.airfit.files.Disk;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.Json;
import org.airfit.files.WrongFileException;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.plant.ReceiverUse;
import org.airfit.plant.ReceiverVerdict;
import org.airfit.plant.Supply;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugVerdict;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.run.LongestHose;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.Catalogue;
import org.airfit.select.DeviceKind;
import org.airfit.select.Finding;
import org.airfit.select.Layout;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Rule;
import org.airfit.select.RuleOutcome;
import org.airfit.select.Selection;
import org.airfit.select.Slot;
import org.airfit.source.Source;
import org.airfit.thread.ThreadIdentification;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** The jobs of the examples, each with what a clerk of 25 years would look for on its sheet. */
class CounterJobsTest {

  private static final Path JOBS = Path.of("..", "jobs");

  private static Job job(String file) throws WrongFileException {
    return Disk.job(JOBS.resolve(file));
  }

  private static JobSheet sheet(String file) throws WrongFileException {
    return JobSheet.of(job(file));
  }

  private static Selection.Proposals proposals(JobSheet sheet) {
    Optional<Selection.Proposals> fitting = sheet
        .selection()
        .orElseThrow()
        .fold(found -> Optional.of(found), nothing -> Optional.empty());
    assertThat(fitting).as(TextSheet.of(sheet)).isPresent();
    return fitting.orElseThrow();
  }

  private static Proposal best(JobSheet sheet) {
    return proposals(sheet).best();
  }

  private static <T extends Part> List<T> parts(Proposal proposal, Class<T> kind) {
    return proposal.parts().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  private static RuleOutcome outcome(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(finding -> finding.rule() == rule)
        .map(Finding::outcome)
        .findFirst()
        .orElseThrow();
  }

  private static List<String> cautions(JobSheet sheet) {
    return InWords.cautions(sheet).stream().map(Caution::title).toList();
  }

  /** The hose is the biggest restriction, and what is proposed has a wider one; the wrench gets its whip hose. */
  @Test
  void a_weak_impact_wrench_starves_on_its_quarter_inch_hose() throws Exception {
    JobSheet sheet = sheet("tyre-bay/weak-impact-wrench.json");
    String stops = sheet
        .now()
        .orElseThrow()
        .fold(delivered -> delivered.bottleneck().name(), starved -> starved.element());
    assertThat(stops).isEqualTo("Hose 1/4 in, rubber, 50 ft");
    Proposal best = best(sheet);
    assertThat(parts(best, Part.Hose.class))
        .hasSize(2)
        .allSatisfy(hose -> assertThat(hose.conduit().bore().metres()).isGreaterThan(0.009));
    assertThat(best.hose("whip hose").conduit().length().metres()).isLessThan(1.0);
    assertThat(outcome(best, Rule.WHIP_HOSE)).isEqualTo(RuleOutcome.MET);
    assertThat(outcome(best, Rule.TOOL_RATED)).isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(arrives(best)).isGreaterThan(90.0);
    assertThat(cautions(sheet)).contains("Whip restraint");
  }

  private static double arrives(Proposal proposal) {
    return proposal
        .result()
        .fold(delivered -> delivered.atToolGauge().psi(), starved -> Double.NaN);
  }

  /** The filters stay, the regulator and the couplings are chosen; the gun's 60 psi hold while the regulator does. */
  @Test
  void a_spray_gun_keeps_its_three_filters_and_gets_a_regulator_of_their_size() throws Exception {
    JobSheet sheet = sheet("body-shop/spray-gun.json");
    Proposal best = best(sheet);
    assertThat(parts(best, Part.Device.class))
        .extracting(Part::name)
        .containsExactly(
            "Filter 1/2 NPT, 5 µm", "Coalescing filter 1/2 NPT, 0.01 µm", "carbon tower");
    assertThat(parts(best, Part.Device.class)).allMatch(filter -> filter.facts().isExisting());
    assertThat(parts(best, Part.Regulator.class)).extracting(Part::id).containsExactly("R-12");
    assertThat(arrives(best)).isBetween(40.0, 55.0);
    assertThat(outcome(best, Rule.TOOL_RATED)).isEqualTo(RuleOutcome.MET_WHILE_REGULATED);
    assertThat(cautions(sheet)).contains("Oil in a paint line");
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("first filter to second filter", "second filter to third filter")
        .doesNotContain("filter to filter")
        .contains("takes 64.4 psi down to what it is set to, 55 psig; that is no loss");
  }

  /**
   * One filter-regulator feeds two sanders and a ratchet. By hand: at 30 scfm it droops by 8 psi × 30 / 80 from its 110
   * psig. The sanders take twice the air of the ratchet through the same hose, and its loss goes with the
   * square of the flow nearly, so that they lose between three and four times as much behind the manifold.
   */
  @Test
  void three_people_on_one_drop_all_have_their_air_at_once() throws Exception {
    JobSheet sheet = sheet("body-shop/three-on-one-drop.json");
    Proposal best = best(sheet);
    assertThat(parts(best, Part.Device.class)).isEmpty();
    assertThat(parts(best, Part.Regulator.class)).extracting(Part::id).containsExactly("FR-12");
    assertThat(parts(best, Part.Splitter.class)).extracting(Part::id).containsExactly("M-12-3");
    assertThat(parts(best, Part.Hose.class)).hasSize(3);
    assertThat(parts(best, Part.Socket.class)).hasSize(6);
    assertThat(parts(best, Part.Plug.class)).hasSize(6);
    List<RunResult.Delivered> ways = best.toEachTool().stream()
        .map(way -> way.result().<RunResult.Delivered>fold(delivered -> delivered, starved -> {
          throw new AssertionError(starved.toString());
        }))
        .toList();
    assertThat(ways).hasSize(2);
    double manifold =
        ways.get(0).share("Filter-regulator 1/2 NPT, 5 µm").outlet().psi() - 14.6;
    assertThat(manifold).isCloseTo(110.0 - 8.0 * 30.0 / 80.0, within(0.01));
    double sander = manifold - ways.get(0).atToolGauge().psi();
    double ratchet = manifold - ways.get(1).atToolGauge().psi();
    double splitter =
        ways.get(0).share("Manifold 1/2 NPT with three outlets 3/8 NPT").drop().psi();
    assertThat((sander - splitter) / (ratchet - splitter)).isBetween(3.0, 4.0);
    assertThat(outcome(best, Rule.AIR_AT_TOOL)).isEqualTo(RuleOutcome.MET);
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("All 3 tools at work at once, which is the worst case, take 30 scfm.")
        .contains("Lines 1 and 2, sander: At the tool ")
        .contains("Line 3, air ratchet: At the tool ")
        .contains("3 × H38-25")
        .contains("while the others work");
    assertThat(PageReasons.of(sheet)).contains("With these parts, lines 1 and 2, sander");
    assertThat(PageSheet.of(sheet))
        .contains("coupling at a sander", "coupling of the third line")
        .contains("hose to a sander; hose to the ratchet")
        .contains(
            "Filter-regulator 1/2 NPT, 5 µm<span class=\"soft\">, filter-regulator of the drop, set to 110"
                + " psig</span>")
        .containsOnlyOnce("set to 110 psig");
    assertThat(PageReasons.of(sheet))
        .contains("<th scope=\"rowgroup\" colspan=\"3\">Lines 1 and 2, sander</th>")
        .contains("takes 9.7 psi down to what it is set to, 110 psig; that is no loss")
        .contains("A thin stroke is what a regulator takes down")
        .doesNotContain("−10.7 psi", ">0 %<");
    String text = TextSheet.of(sheet).replaceAll("\\s+", " ");
    assertThat(text)
        .contains("filter regulator in the line, set to 110 psig, pressure loss 3 psi")
        .contains(
            "lines 1 and 2, sander: splitter to socket, plug to hose, hose to socket, plug to tool;")
        .doesNotContain("loss 0 psi");
  }

  /**
   * Two benches behind one drop, each with a manifold of its own. By hand: the drop carries 2 × (10 + 5) = 30 scfm, so
   * that the filter-regulator holds 110 psig less 8 psi × 30 / 50, and each trunk carries 15 scfm.
   */
  @Test
  void two_benches_with_manifolds_of_their_own_are_fed_from_one_drop() throws Exception {
    JobSheet sheet = sheet("body-shop/two-benches.json");
    Proposal best = best(sheet);
    assertThat(sheet.job().toolName()).isEqualTo("2 × sander, 2 × air ratchet");
    assertThat(parts(best, Part.Splitter.class))
        .extracting(Part::id)
        .containsExactly("Y-38-2", "M-12-3", "M-12-3");
    assertThat(parts(best, Part.Hose.class)).hasSize(2 + 4);
    RunResult.Delivered sander = best.toEachTool()
        .get(0)
        .result()
        .<RunResult.Delivered>fold(delivered -> delivered, starved -> {
          throw new AssertionError(starved.toString());
        });
    assertThat(sander.share("Filter-regulator 3/8 NPT, 5 µm").outlet().psi() - 14.6)
        .isCloseTo(110.0 - 8.0 * 30.0 / 50.0, within(0.01));
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("All 4 tools at work at once, which is the worst case, take 30 scfm.")
        .contains("2 lines to bench manifold: 25 ft of hose with 3/8 in of bore")
        .contains("2 × H38-25", "4 × H14-25")
        .contains(
            "What closes the outlets of each of the 2 Manifold 1/2 NPT with three outlets 3/8 NPT"
                + " (bench manifold) that no line uses, 3/8 NPT female?")
        .as("the headline does not hide it")
        .contains("Still open: what closes the outlets of each of the 2 Manifold 1/2 NPT");
    assertThat(PageReasons.of(sheet))
        .contains("<th scope=\"rowgroup\" colspan=\"3\">2 lines to bench manifold</th>")
        .contains("<th scope=\"rowgroup\" colspan=\"3\">Lines 3 and 4, air ratchet</th>");
  }

  /** What others take behind a splitter of the line is drawn from the receiver too. */
  @Test
  void a_receiver_carries_what_others_take_of_the_line_too() throws Exception {
    String alone = Files.readString(JOBS.resolve("pier/receiver-for-blasting.json"));
    String outlet = "{\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"},";
    assertThat(alone).contains(outlet);
    String shared = alone.replace(
        outlet,
        outlet + " {\"kind\": \"splitter\", \"othersTake\": \"4 to 9 scfm\", \"part\": {\"end\":"
            + " \"1/2 NPT male\", \"outlets\": [\"1/2 NPT female\", \"1/2 NPT female\"], \"rated\":"
            + " \"200 psig\", \"capacity\": \"C 40 dm3/(s bar), b 0.4\"}},");
    ReceiverUse use = receiverUse(shared);
    assertThat(use.demand().least().cubicFeetPerMinute()).isCloseTo(49.0, within(1.0e-6));
    assertThat(use.demand().most().cubicFeetPerMinute()).isCloseTo(54.0, within(1.0e-6));
    assertThat(receiver(shared))
        .contains("The draw counts what others take of the line, 4 scfm to 9 scfm");
    assertThat(receiverUse(alone).demand().isExact()).isTrue();
    assertThat(receiver(alone)).doesNotContain("others take of the line");
  }

  /**
   * What the tool needs in the receiver lies on both sides of the 130 psig that are there when a draw begins, or beyond
   * them whatever it is: only the first depends.
   */
  @Test
  void a_receiver_depends_where_what_the_tool_needs_may_be_more_than_is_there() throws Exception {
    String told = Files.readString(JOBS.resolve("pier/receiver-for-blasting.json"));
    String need = "\"pressure\": \"80 psig\"";
    assertThat(told).contains(need);
    String mayDo = receiver(told.replace(need, "\"pressure\": \"80 to 129 psig\""));
    assertThat(mayDo)
        .contains("What the tool needs in the receiver depends on what is not known", "it depends")
        .containsPattern("and it has 130 psig .*when a draw begins");
    String never = receiver(told.replace(need, "\"pressure\": \"129 to 130 psig\""));
    assertThat(never).doesNotContain("it depends");
  }

  private static ReceiverUse receiverUse(String job) throws Exception {
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    return sheet(job, catalogue).receiver().orElseThrow().use().orElseThrow();
  }

  /** The cheapest hose of that length is kept for oiled air: paint never gets it. */
  @Test
  void paint_beside_an_oiled_line_is_never_offered_a_hose_kept_for_oiled_air() throws Exception {
    JobSheet sheet = sheet("body-shop/paint-beside-oiled-line.json");
    assertThat(((Part.Hose) sheet.job().catalogue().parts().part("H38-50L").orElseThrow())
            .facts()
            .price()
            .orElseThrow())
        .isLessThan(((Part.Hose) sheet.job().catalogue().parts().part("H38-50").orElseThrow())
            .facts()
            .price()
            .orElseThrow());
    for (Proposal proposal : proposals(sheet).proposals()) {
      assertThat(proposal.parts())
          .noneMatch(
              part -> part.facts().lubrication().equals(Optional.of(Lubrication.LUBRICATED)));
    }
    assertThat(best(sheet).hose("hose").id()).isEqualTo("H38-50");
    assertThat(PageReasons.of(sheet)).contains("yellow sleeve");
  }

  @Test
  void a_blow_gun_that_lets_off_is_served_and_one_that_does_not_is_refused() throws Exception {
    JobSheet sheet = sheet("tyre-bay/blow-gun.json");
    assertThat(outcome(best(sheet), Rule.CLEANING_PRESSURE)).isEqualTo(RuleOutcome.MET);
    assertThat(cautions(sheet)).anyMatch(title -> title.contains("Guards when cleaning"));
    JobSheet blocked = JobSheet.of(sheet
        .job()
        .withRequirement(sheet.job().requirement().toBuilder()
            .blowGun(GaugePressure.ofPsi(31.0))
            .build()));
    assertThat(blocked.selection().orElseThrow().<Boolean>fold(found -> true, nothing -> false))
        .isFalse();
  }

  /** Between the outlet and the reel goes a hose, the shorter one; the reel is chosen, and what is there stays. */
  @Test
  void a_reel_gets_its_inlet_hose_and_a_coupling_at_its_end() throws Exception {
    JobSheet sheet = sheet("tyre-bay/reel.json");
    Proposal best = best(sheet);
    assertThat(parts(best, Part.Device.class))
        .singleElement()
        .satisfies(reel -> assertThat(reel.kind()).isEqualTo(DeviceKind.REEL));
    assertThat(best.hose("inlet hose of the reel").conduit().length())
        .isEqualTo(Length.of(3.0, LengthUnit.FOOT));
    assertThat(best.hose("whip hose").facts().isExisting()).isTrue();
    assertThat(best.socket("coupling at the end of the reel").profiles()).contains("plover");
  }

  /** 105 scfm go through a hose of claws, which are not screwed and need no sealant, and it is held at both ends. */
  @Test
  void a_blast_pot_with_claws_gets_a_wide_hose_that_is_restrained() throws Exception {
    JobSheet sheet = sheet("pier/blast-pot.json");
    Proposal best = best(sheet);
    assertThat(best.hose("bull hose").upstream().toString()).contains("claw");
    assertThat(best.hose("bull hose").conduit().bore().metres()).isGreaterThan(0.018);
    assertThat(arrives(best)).isGreaterThan(90.0);
    String text = TextSheet.of(sheet);
    assertThat(text).contains("Whip restraint", "Blasting nozzle").doesNotContain("Thread tape");
  }

  @Test
  void salt_water_gets_no_plain_or_plated_steel() throws Exception {
    for (Proposal proposal : proposals(sheet("pier/salt-air.json")).proposals()) {
      assertThat(proposal.parts())
          .noneMatch(part -> part.facts()
              .material()
              .filter(
                  List.of(Material.STEEL, Material.HARDENED_STEEL, Material.PLATED_HARDENED_STEEL)
                      ::contains)
              .isPresent());
    }
  }

  @Test
  void caustic_wash_down_gets_stainless_steel_only() throws Exception {
    for (Proposal proposal : proposals(sheet("cannery/wash-down.json")).proposals()) {
      assertThat(proposal.parts())
          .allMatch(part -> part.facts().material().equals(Optional.of(Material.STAINLESS_STEEL)));
    }
  }

  /** The socket that is dragged along has a guarded sleeve; the one on the post need not have. */
  @Test
  void couplings_that_are_dragged_have_guarded_sleeves() throws Exception {
    Proposal best = best(sheet("pier/dropped-and-dragged.json"));
    assertThat(best.socket("coupling at the grinder").facts().isSleeveGuarded()).isTrue();
    assertThat(outcome(best, Rule.SLEEVE_GUARDED)).isEqualTo(RuleOutcome.MET);
    assertThat(best.parts())
        .noneMatch(part -> part instanceof Part.Socket
            && part.facts().material().equals(Optional.of(Material.BRASS)));
  }

  @Test
  void two_plugs_of_nearly_one_tip_length_are_not_told_apart_by_it() throws Exception {
    JobSheet sheet = sheet("counter/two-near-plugs.json");
    Identification plug = sheet.plug().orElseThrow();
    assertThat(plug.verdict()).isEqualTo(PlugVerdict.AMBIGUOUS);
    assertThat(plug.likely())
        .extracting(candidate -> candidate.profile().id())
        .containsExactlyInAnyOrder("plover", "dunlin");
    assertThat(plug.nextReadings().get(0).dimension())
        .as("of all dimensions these two differ most in their groove and where it stands")
        .isIn(Dimension.GROOVE_WIDTH, Dimension.TIP_TO_COLLAR);
    assertThat(sheet.selection()).isEmpty();
  }

  @Test
  void a_socket_alone_is_not_identified_and_the_universal_one_is_a_way_out() throws Exception {
    JobSheet sheet = sheet("counter/socket-alone.json");
    assertThat(sheet.plug()).isEmpty();
    assertThat(sheet.selection()).isEmpty();
    assertThat(TextSheet.of(sheet))
        .contains("A socket alone cannot be identified")
        .as("on the shelf, and in no set")
        .containsPattern("take\\s+each\\s+of\\s+them:\\s+Socket\\s+Plover\\s+and\\s+Dunlin");
  }

  /**
   * Nobody knows more of it than 3/8 in and old: its bore is anything that ISO 1307 lets a 3/8 in hose have (from
   * memory 8.7 to 10.3 mm over all makes), so that the air depends, and the rating is asked for.
   */
  @Test
  void an_old_hose_of_unknown_make_is_a_range_with_open_questions() throws Exception {
    JobSheet sheet = sheet("counter/old-unknown-hose.json");
    Proposal best = best(sheet);
    Part.Hose old = best.hose("hose");
    assertThat(old.facts().isExisting()).isTrue();
    assertThat(old.conduitRange().isExact()).isFalse();
    assertThat(old.conduitRange().least().bore().millimetres()).isBetween(8.0, 9.5);
    assertThat(old.conduitRange().most().bore().millimetres()).isBetween(9.6, 11.0);
    assertThat(old.conduit().length()).isEqualTo(Length.of(25.0, LengthUnit.FOOT));
    assertThat(outcome(best, Rule.PARTS_RATED)).isEqualTo(RuleOutcome.OPEN);
    assertThat(outcome(best, Rule.AIR_AT_TOOL)).isEqualTo(RuleOutcome.OPEN);
    assertThat(parts(best, Part.Adapter.class)).extracting(Part::id).contains("A-T38M");
    assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
        .contains("It depends on what is not known: at the tool from ")
        .as("ISO 1307 limits of 3/8 in: both ends of the bore are told")
        .contains("25 ft of hose with 0.343 in to 0.406 in of bore")
        .as("what can be measured is asked for first, never the roughness")
        .contains("It is enough if the bore of 3/8 in hose, old is at least")
        .doesNotContain("too little.");
    String reasons = PageReasons.of(sheet);
    assertThat(reasons).contains("What was taken for what the parts do not tell");
    assertThat(reasons.split("<li>3/8 in hose, old: ", -1)).as("once").hasSize(2);
  }

  /** Its rating is asked for, tails with clamps go into it, and it is not bought. */
  @Test
  void an_old_barbed_hose_is_asked_for_its_rating() throws Exception {
    JobSheet sheet = sheet("counter/old-barbed-hose.json");
    Proposal best = best(sheet);
    assertThat(outcome(best, Rule.PARTS_RATED)).isEqualTo(RuleOutcome.OPEN);
    assertThat(best.open()).anyMatch(finding -> finding.reason().contains("no mark on it"));
    assertThat(parts(best, Part.Adapter.class)).extracting(Part::id).contains("A-T38M");
    assertThat(best.hose("old hose").facts().isExisting()).isTrue();
  }

  /** 18.5 threads per inch are no pipe thread: 1/4 NPT has 18, and the leaf was worn. */
  @Test
  void a_worn_gauge_does_not_make_a_thread_of_its_own() throws Exception {
    ThreadIdentification thread = sheet("counter/worn-gauge.json").thread().orElseThrow();
    assertThat(thread.inWords()).contains("1/4 NPT", "do not prove");
    assertThat(thread.settlingReadings()).isNotEmpty();
    assertThat(thread.identified()).isEmpty();
  }

  /** R and NPT threads of 1/2 have the same 14 threads per inch, and are never screwed together. */
  @Test
  void a_bspt_outlet_gets_its_adapter_in_an_npt_shop() throws Exception {
    Proposal best = best(sheet("counter/bspt-outlet.json"));
    assertThat(best.parts().get(0).id()).isEqualTo("A-R12");
  }

  @Test
  void a_small_plug_on_a_large_pipe_gets_one_bushing_and_keeps_its_plug() throws Exception {
    Proposal best = best(sheet("counter/small-plug-large-pipe.json"));
    assertThat(best.parts().get(0).id()).isEqualTo("A-3412");
    assertThat(parts(best, Part.Adapter.class)).hasSize(1);
    assertThat(best.plug("coupling at the tool").facts().isExisting()).isTrue();
  }

  @Test
  void nitrogen_is_refused_before_anything_is_computed() throws Exception {
    assertThat(Disk.refusal(JOBS.resolve("counter/nitrogen.json")).orElseThrow().reason())
        .contains("not on nitrogen", "suffocates");
    assertThat(sheet("counter/nitrogen.json").selection()).isEmpty();
  }

  /** 60 m are asked for: the longest hose in stock is the nearest, not the shortest. */
  @Test
  void the_nearest_miss_of_a_long_reach_is_the_longest_hose() throws Exception {
    JobSheet sheet = sheet("counter/long-reach.json");
    Proposal nearest = nothingFits(sheet).nearest().get(0);
    assertThat(nearest.hose("hose").conduit().length())
        .isEqualTo(Length.of(100.0, LengthUnit.FOOT));
    assertThat(nearest.unmet()).extracting(Finding::rule).containsExactly(Rule.HOSE_REACHES);
  }

  /**
   * The longest hose of the catalogue is 100 ft: 3/8 in leaves too little over it, so that it is the 1/2 in one, and
   * each size is told with its own longest, of which one foot more is too long.
   */
  @Test
  void the_longest_hose_is_found_among_those_that_exist() throws Exception {
    JobSheet sheet = sheet("counter/longest-hose.json");
    assertThat(best(sheet).hose("hose").id()).isEqualTo("H12-100");
    assertThat(arrives(best(sheet))).isGreaterThanOrEqualTo(85.0);
    String text = TextSheet.of(sheet).replaceAll("\\s+", " ");
    assertThat(text)
        .contains(
            "Longest hose: The longest hose of the catalogue that leaves the tool its pressure is"
                + " Hose 1/2 in, rubber, 100 ft.")
        .containsPattern(
            "1/4 in hose: up to [0-9]+ ft; 3/8 in hose: up to [0-9]+ ft; 1/2 in hose: up to"
                + " [0-9]+ ft; 3/4 in hose: 1000 ft and more\\.");
    assertThat(PageSheet.of(sheet)).contains("<dt>Longest hose</dt>");
    Run run = best(sheet).run();
    for (LongestHose each : LongestHose.ofEverySize(
        run,
        "Hose 1/2 in, rubber, 100 ft",
        sheet.requirement().demand().massFlow(),
        sheet.requirement().least(),
        sheet.units())) {
      if (!each.isWithoutEnd()) {
        assertThat(text)
            .contains(each.size() + ": up to " + sheet.units().say(each.length().orElseThrow()));
      }
    }
  }

  /** What the tool may take decides over 100 ft, and not over 50 ft: only of these it is sure. */
  @Test
  void the_longest_hose_is_one_that_surely_does_before_one_that_may() throws Exception {
    String job = Files.readString(JOBS.resolve("counter/longest-hose.json"));
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    JobSheet at22 = sheet(job, catalogue);
    JobSheet at40 = sheet(job.replace("22 scfm", "40 scfm"), catalogue);
    assertThat(best(at22).hose("hose").id()).isEqualTo("H12-100");
    assertThat(best(at40).hose("hose").id()).isEqualTo("H12-50");
    JobSheet range = sheet(job.replace("22 scfm", "22 to 40 scfm"), catalogue);
    assertThat(best(range).hose("hose").id()).isEqualTo("H12-50");
    assertThat(outcome(best(range), Rule.AIR_AT_TOOL)).isEqualTo(RuleOutcome.MET);
    JobSheet wide = sheet(job.replace("22 scfm", "22 to 400 scfm"), catalogue);
    assertThat(outcome(best(wide), Rule.AIR_AT_TOOL)).isEqualTo(RuleOutcome.OPEN);
    assertThat(TextSheet.of(wide).replaceAll("\\s+", " "))
        .contains("that may leave the tool its pressure, which depends on what is not known, is"
            + " Hose 1/2 in, rubber, 100 ft.");
  }

  @Test
  void a_hose_whose_length_is_not_quite_known_reaches_as_far_as_its_shortest() throws Exception {
    Job job = sheet("counter/longest-hose.json").job();
    Catalogue known = job.catalogue().parts();
    List<Part> parts = known.parts().stream()
        .map(part -> part.facts().id().equals("H12-100") ? cutBack((Part.Hose) part) : part)
        .toList();
    HoseAnswer answer = HoseAnswer.of(
        job.question().orElseThrow(), job.requirement(), Catalogue.of(parts, known.accessories()));
    Proposal best = answer.selection().fold(Selection.Proposals::best, nothing -> {
      throw new AssertionError(nothing.toString());
    });
    assertThat(best.hose("hose").id()).isEqualTo("H12-100");
    assertThat(answer.sentences(UnitSystem.US).get(0))
        .contains("that leaves the tool its pressure");
  }

  /** It may have been cut back by up to 10 ft. */
  private static Part.Hose cutBack(Part.Hose hose) {
    Conduit whole = hose.conduit();
    return new Part.Hose(
        hose.facts(),
        hose.bore(),
        new ConduitRange(
            whole,
            whole.withLength(whole.length().minus(Length.of(10.0, LengthUnit.FOOT))),
            Source.demo("a hose that may have been cut back")),
        hose.upstream(),
        hose.downstream());
  }

  private static JobSheet sheet(String job, String catalogue) throws Exception {
    return JobSheet.of(JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue)))));
  }

  @Test
  void the_least_bore_is_told_size_by_size() throws Exception {
    String text = TextSheet.of(sheet("counter/least-bore.json")).replaceAll("\\s+", " ");
    assertThat(text)
        .contains(
            "Least bore: The narrowest hose of the catalogue that leaves the tool its pressure is"
                + " Hose 1/2 in, rubber, 100 ft.")
        .containsPattern(
            "with a 3/8 in hose 8[0-9.]+ psig: too little; with a 1/2 in hose 9[0-9.]+ psig: enough");
  }

  /** A wide hose is cheaper here than a narrow one, and still the narrow one is the answer. */
  @Test
  void the_least_bore_is_not_the_cheapest_hose() throws Exception {
    String job = Files.readString(JOBS.resolve("counter/least-bore.json"))
        .replace("100 ft", "25 ft")
        .replace("22 scfm", "6 scfm");
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    String dear =
        catalogue.replaceFirst("(\"id\": \"H14-25\"[^}]*?\"price\": )\"[0-9.]+\"", "$1\"999.00\"");
    assertThat(dear).isNotEqualTo(catalogue);
    JobSheet sheet = sheet(job, dear);
    assertThat(best(sheet).hose("hose").bore().label())
        .as("the narrow hose of 50 ft, as that of 25 ft is dear")
        .isEqualTo("1/4 in");
  }

  /**
   * 45 scfm are drawn and 18 delivered: 27 scfm lack for 45 s, 20.25 ft³. Between 144.7 and about 124.5 psia the
   * receiver of 32.08 ft³ stores 32.08 × 20.2 / 14.7 = 44 ft³ at most, and seven tenths of that where the air gets
   * cold.
   */
  @Test
  void a_receiver_carries_a_blast_cabinet_that_the_compressor_cannot() throws Exception {
    JobSheet sheet = sheet("pier/receiver-for-blasting.json");
    ReceiverUse use = sheet.receiver().orElseThrow().use().orElseThrow();
    assertThat(use.verdict()).isEqualTo(ReceiverVerdict.MET);
    assertThat(use.carriesAtMost().orElseThrow().toSeconds()).isBetween(90L, 105L);
    assertThat(use.carriesAtLeast().orElseThrow().toSeconds()).isBetween(63L, 80L);
    // 27 × 45 s / 18 = 67.5 s
    assertThat(use.bringingBack().orElseThrow().toMillis()).isBetween(67_400L, 67_600L);
    assertThat(arrivesFrom(sheet, use.least()))
        .as("at that pressure the tool has just what it needs")
        .isCloseTo(80.0, within(0.01));
    String text = TextSheet.of(sheet);
    assertThat(text.replaceAll("\\s+", " "))
        .contains(
            "Receiver: With the parts proposed the tool needs ", "The receiver for this user: met.")
        .contains("Receiver protection:");
    assertThat(text).contains("A receiver for a user that draws now and then", "Esposito");
    assertThat(PageSheet.of(sheet)).contains("<dt>Receiver</dt>").doesNotContain("Esposito");
    assertThat(PageReasons.of(sheet)).contains("Esposito");
  }

  /** So far the receiver may fall that the tool which needs most still has its pressure, while all work. */
  @Test
  void a_receiver_of_several_tools_falls_as_far_as_the_one_that_needs_most_lets_it()
      throws Exception {
    String receiver =
        "\"receiver\": {\"volume\": \"240 US gal\", \"from\": \"130 psig\", \"draws\": \"45 s\","
            + " \"every\": \"5 min\", \"compressor\": \"18 scfm\"}, \"supply\"";
    String job = Files.readString(JOBS.resolve("body-shop/three-on-one-drop.json"))
        .replaceFirst("\"supply\"", receiver);
    JobSheet sheet = sheet(job, Files.readString(JOBS.resolve("quay-street/catalogue.json")));
    GaugePressure least = sheet.receiver().orElseThrow().use().orElseThrow().least();
    List<Double> arrives = best(sheet).toEachTool().stream()
        .map(way -> arrivesFrom(way.run(), way.requirement().demand(), least))
        .toList();
    assertThat(arrives).hasSize(2);
    assertThat(Collections.min(arrives)).isCloseTo(85.0, within(0.01));
  }

  /** What arrives where the supply stands at a pressure. */
  private static double arrivesFrom(JobSheet sheet, GaugePressure supply) {
    return arrivesFrom(best(sheet).run(), sheet.requirement().demand(), supply);
  }

  private static double arrivesFrom(Run run, FreeAirFlow demand, GaugePressure supply) {
    return run.suppliedBy(Supply.fixed(run.stillAir().at(supply.absolute(run.atmosphere()))))
        .at(demand)
        .fold(delivered -> delivered.atToolGauge().psi(), starved -> Double.NaN);
  }

  @Test
  void a_receiver_that_is_too_small_or_unknown_is_told_so() throws Exception {
    String job = Files.readString(JOBS.resolve("pier/receiver-for-blasting.json"));
    assertThat(receiver(job.replace("240 US gal", "60 US gal")))
        .contains("NOT MET, the receiver is too small", "A receiver of ");
    assertThat(receiver(job.replace("5 min", "90 s")))
        .contains("NOT MET, the compressor delivers too little", "no receiver makes up for that");
    assertThat(receiver(job.replace(", \"compressor\": \"18 scfm\"", "")))
        .contains("without the compressor", "ask what it delivers");
    assertThat(receiver(job.replace("\"from\": \"130 psig\"", "\"from\": \"109 psig\"")))
        .contains("whatever its volume", "no larger receiver");
    String told = receiver(job.replace("\"from\": \"130 psig\"", "\"to\": \"100 psig\""));
    assertThat(told).contains("From 110 psig down to 100 psig");
    assertThat(told)
        .as("the parts are judged where the receiver may fall to")
        .doesNotContain("H38-25");
  }

  /** The lines of the sheet up to its parts. */
  private static String receiver(String job) throws Exception {
    String catalogue = Files.readString(JOBS.resolve("quay-street/catalogue.json"));
    JobSheet sheet = JobSheet.of(JobFile.read(new Document(
        "job.json",
        Json.read("job.json", job),
        name -> Document.of(name, Json.read(name, catalogue)))));
    String text = TextSheet.of(sheet);
    return text.substring(0, text.indexOf("RECOMMENDED PARTS")).replaceAll("\\s+", " ");
  }

  /** Of 100 ft there are 3/8 in and 1/2 in: the narrower one leaves too little, and is told so where it is tried. */
  @Test
  void the_least_bore_of_a_long_hose_is_the_one_that_leaves_enough() throws Exception {
    JobSheet sheet = sheet("counter/least-bore.json");
    for (Proposal proposal : proposals(sheet).proposals()) {
      assertThat(proposal.hose("hose").id()).isEqualTo("H12-100");
      assertThat(arrives(proposal)).isGreaterThanOrEqualTo(85.0);
    }
    Part.Hose narrow =
        (Part.Hose) sheet.job().catalogue().parts().part("H38-100").orElseThrow();
    Layout layout = sheet.requirement().layout();
    List<Slot> slots = layout.slots().stream()
        .map(slot -> slot instanceof Slot.Hose hose ? hose.with(narrow) : slot)
        .toList();
    JobSheet tried = JobSheet.of(sheet
        .job()
        .withRequirement(
            sheet.requirement().toBuilder().layout(Layout.of(slots)).build()));
    Proposal miss = nothingFits(tried).nearest().get(0);
    assertThat(miss.unmet()).extracting(Finding::rule).containsExactly(Rule.AIR_AT_TOOL);
  }

  private static Selection.NothingFits nothingFits(JobSheet sheet) {
    return sheet
        .selection()
        .orElseThrow()
        .<Selection.NothingFits>fold(
            found -> {
              throw new AssertionError(found);
            },
            none -> none);
  }

  /**
   * 400 l/min may be counted at 20 °C (ANR), 0 °C (DIN 1343), as ISO 1217 does, or as it is drawn in at the site. As
   * mass DIN 1343 is the most, about 9 % above ANR: 293.15 K over 273.15 K is 1.073, 1.01325 bar over 1 bar 1.013.
   */
  @Test
  void a_flow_in_litres_is_read_with_all_its_meanings() throws Exception {
    JobSheet sheet = sheet("body-shop/marked-in-litres.json");
    var air = sheet.requirement().demandRange();
    assertThat(air.isExact()).isFalse();
    assertThat(air.contains(FreeAirFlow.parse("400 L/min ANR"))).isTrue();
    assertThat(air.most().massFlow().kilogramsPerSecond())
        .isCloseTo(
            FreeAirFlow.parse("400 L/min DIN 1343").massFlow().kilogramsPerSecond(),
            within(1.0e-12));
    assertThat(sheet.requirement().least()).isEqualTo(GaugePressure.ofBar(6.3));
    double ratio =
        air.most().massFlow().kilogramsPerSecond() / air.least().massFlow().kilogramsPerSecond();
    assertThat(ratio).isBetween(1.07, 1.12);
    assertThat(sheet.job().remarks())
        .anyMatch(remark -> remark.contains("ANR") && remark.contains("DIN 1343"));
    assertThat(arrives(best(sheet))).isGreaterThan(6.3 * 14.5038);
  }

  /** The plate tells an average: the hose is chosen for the air while the tool runs, up to four times as much. */
  @Test
  void an_average_flow_is_not_taken_for_the_flow_while_the_tool_runs() throws Exception {
    JobSheet sheet = sheet("tyre-bay/average-cfm.json");
    var air = sheet.requirement().demandRange();
    assertThat(air.contains(FreeAirFlow.parse("4 scfm"))).isTrue();
    assertThat(air.contains(FreeAirFlow.parse("16 scfm"))).isTrue();
    assertThat(air.contains(FreeAirFlow.parse("18 scfm"))).isFalse();
    assertThat(sheet.job().remarks()).anyMatch(remark -> remark.contains("is an average"));
    assertThat(arrives(best(sheet))).isGreaterThan(90.0);
  }

  /** The cheapest costs less and has more pieces; the simplest has fewer and costs more. */
  @Test
  void price_and_pieces_are_two_different_orders() throws Exception {
    Proposal cheapest = best(sheet("counter/by-price.json"));
    Proposal simplest = best(sheet("counter/by-pieces.json"));
    assertThat(cheapest.price().orElseThrow()).isLessThan(simplest.price().orElseThrow());
    assertThat(cheapest.parts()).hasSizeGreaterThan(simplest.parts().size());
  }

  /** The regulator's droop of 6 psi at 50 scfm is 3 psi at 25, and stands between its set point and the tool. */
  @Test
  void a_regulator_in_mid_run_droops_and_its_lubricator_makes_the_line_an_oiled_one()
      throws Exception {
    JobSheet sheet = sheet("machine-shop/filter-regulator-lubricator.json");
    Proposal best = best(sheet);
    double behind =
        best.result().fold(RunResult.Delivered::shares, RunResult.Starved::before).stream()
            .filter(share -> share.name().equals("Regulator 3/8 NPT"))
            .mapToDouble(
                share -> share.outlet().psi() - sheet.job().atmosphere().psi())
            .findFirst()
            .orElseThrow();
    assertThat(behind).isCloseTo(90.0 - 3.0, within(0.01));
    assertThat(best.parts())
        .noneMatch(part -> part.facts().lubrication().equals(Optional.of(Lubrication.DRY)));
    assertThat(arrives(best)).isBetween(75.0, 87.0);
  }

  @Test
  void three_profiles_stand_in_one_run_each_where_it_was_asked_for() throws Exception {
    Proposal best = best(sheet("machine-shop/mixed-profiles.json"));
    assertThat(List.of(
            best.plug("coupling at the outlet").profile(),
            best.plug("coupling at the bench").profile(),
            best.plug("coupling at the tool").profile()))
        .containsExactly("heron", "curlew", "plover");
  }

  /** 5000 ft are 1524 m, where the standard atmosphere is 84.3 kPa or 12.2 psi: ISO 2533, from memory. */
  @Test
  void at_5000_ft_gauges_read_against_thin_air() throws Exception {
    JobSheet sheet = sheet("hill-quarry/at-5000-ft.json");
    assertThat(sheet.job().atmosphere().bar()).isCloseTo(0.843, within(0.001));
    assertThat(sheet.job().supply().pressure().bar())
        .as("125 psig above it")
        .isCloseTo(0.843 + 125.0 * 0.0689476, within(0.001));
    assertThat(best(sheet).hose("hose").conduit().bore().metres()).isGreaterThan(0.018);
  }

  private static String text(String file) throws WrongFileException {
    return TextSheet.of(sheet(file)).replaceAll("\\s+", " ");
  }

  /** Said once where the answers stand and once at the plug; the parts do not say it again. */
  @Test
  void what_to_read_next_of_a_plug_is_not_said_a_third_time() throws Exception {
    String text = text("counter/two-near-plugs.json");
    String handedOver = text.substring(0, text.indexOf("THE WORKING"));
    assertThat(handedOver.split("Measure the groove width", -1)).hasSize(3);
    assertThat(text).contains("Not chosen yet: the profile must be known first. What to read next");
  }

  /** Which air does not get through is said with its amount, and of a range that it is the most. */
  @Test
  void the_air_that_a_tool_lacks_or_takes_at_most_is_told_with_its_amount() throws Exception {
    assertThat(text("tyre-bay/weak-impact-wrench.json"))
        .contains("50 ft does not let its 22 scfm (10.7 L/s ANR) through.")
        .doesNotContain("that air through");
    assertThat(text("tyre-bay/average-cfm.json")).contains("Ratchet takes up to 16 scfm");
    assertThat(text("tyre-bay/reel.json")).contains("ratchet takes 6 scfm");
  }

  /** A clock has no tenths of minutes. */
  @Test
  void a_receiver_tells_times_as_a_clock_does() throws Exception {
    assertThat(text("pier/receiver-for-blasting.json"))
        .containsPattern("from 109.8 psig to 130 psig in [0-9]+ min [0-9]+ s")
        .doesNotContainPattern("[0-9]\\.[0-9] min")
        .contains("so its pressure may fall no further than that.");
  }

  /**
   * A tool whose air is a range has at least what is printed, and the sheet says so wherever it tells it; where all is
   * known exactly no such word stands before it.
   */
  @Test
  void a_pressure_that_is_known_at_its_worst_only_is_told_as_the_least() throws Exception {
    for (String file : List.of("body-shop/marked-in-litres.json", "counter/by-price.json")) {
      JobSheet sheet = sheet(file);
      Proposal best = best(sheet);
      boolean isRange = !sheet
          .units()
          .sayBoth(atTool(best.result()))
          .equals(sheet.units().sayBoth(atTool(best.resultAtBest())));
      assertThat(isRange).as(file).isEqualTo(file.startsWith("body-shop"));
      String said = isRange
          ? "at least "
              + sheet
                  .units()
                  .sayAtLeast(atTool(best.result()), best.requirement().least())
          : sheet.units().say(atTool(best.result()), best.requirement().least());
      assertThat(TextSheet.of(sheet).replaceAll("\\s+", " "))
          .contains("Recommended parts: At the tool " + said, "USD, " + said + " at the tool.");
      assertThat(PageSheet.of(sheet)).contains("At the tool " + said);
      assertThat(OnScreen.arrives(sheet, best)).startsWith("At the tool " + said);
    }
  }

  private static GaugePressure atTool(RunResult result) {
    return result
        .<Optional<GaugePressure>>fold(
            delivered -> Optional.of(delivered.atToolGauge()), starved -> Optional.empty())
        .orElseThrow();
  }
}
