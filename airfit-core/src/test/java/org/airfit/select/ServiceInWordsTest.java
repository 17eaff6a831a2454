package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;

/** What the rules on place, use and air say, compared whole: nothing is said too much and nothing is left out. */
class ServiceInWordsTest {

  private static final String WALL_NOT_JUDGED =
      " The wall of the hose is not judged for weather and cleaners: ask its maker.";

  private static PartFacts facts(String id) {
    return PartFacts.of(id, id).withRating(GaugePressure.ofBar(16.0));
  }

  private static PartFacts of(String id, Material material) {
    return facts(id).withMaterial(material);
  }

  /** A job of which neither the place nor the kind of air is told. */
  private static Requirement.Builder untold() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.2))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("1/2 NPT female"))
        .reach(Length.ofMetres(10.0));
  }

  private static Requirement.Builder at(Environment place) {
    return untold().environment(place);
  }

  private static Part.Adapter nipple(PartFacts facts) {
    return new Part.Adapter(
        facts,
        End.parse("1/2 NPT male"),
        End.parse("3/8 NPT male"),
        Conduit.of(
            Length.ofMillimetres(9.0), Length.ofMillimetres(30.0), Length.ofMillimetres(0.0)));
  }

  private static Part.Hose rubber(PartFacts facts) {
    return Shelf.of(Wall.SMOOTH_RUBBER_HOSE, Shelf.hose(facts, 9.5, 10.0));
  }

  /** The one combination of a nipple, a socket twice, two plugs and a hose. */
  private static Proposal run(
      Requirement.Builder job,
      PartFacts nipple,
      PartFacts socket,
      PartFacts hosePlug,
      PartFacts toolPlug,
      Part.Hose hose) {
    List<Part> parts = new ArrayList<>(List.of(
        nipple(nipple),
        Shelf.socket(socket, "finch", "3/8 NPT female", 9.0),
        Shelf.plug(hosePlug, "finch", "3/8 NPT female"),
        Shelf.plug(toolPlug, "finch", "1/4 NPT male"),
        hose));
    return Selection.of(job.build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }

  private static Proposal allOf(Requirement.Builder job, Material material) {
    return run(
        job,
        of("nipple", material),
        of("socket", material),
        of("hose plug", material),
        of("tool plug", material),
        rubber(of("hose", material)));
  }

  /** All new and of one material but for the nipple. */
  private static Proposal with(Requirement.Builder job, Material material, PartFacts nipple) {
    return run(
        job,
        nipple,
        of("socket", material),
        of("hose plug", material),
        of("tool plug", material),
        rubber(of("hose", material)));
  }

  private static String said(Proposal proposal, Rule rule) {
    return proposal.findings().stream()
        .filter(each -> each.rule() == rule)
        .findFirst()
        .orElseThrow()
        .toString();
  }

  private static String material(Proposal proposal) {
    return said(proposal, Rule.MATERIAL_SUITS);
  }

  @Test
  void where_nothing_is_told_the_place_is_asked_for_and_knocks_only_if_nobody_told_of_them() {
    assertThat(material(allOf(untold(), Material.BRASS)))
        .isEqualTo(
            "Material suits the place: ask. Ask where it will be used, and whether couplings are"
                + " dropped on concrete.");
    assertThat(material(allOf(untold().dropped(), Material.STAINLESS_STEEL)))
        .isEqualTo("Material suits the place: ask. Ask where it will be used.");
  }

  @Test
  void a_wall_that_nobody_knows_is_asked_for_on_a_percussion_tool() {
    Part.Hose unknown = Shelf.hose(of("hose", Material.STEEL), 9.5, 10.0);
    Proposal untold = run(
        untold().impactTool(),
        of("nipple", Material.STEEL),
        of("socket", Material.STEEL),
        of("hose plug", Material.STEEL),
        of("tool plug", Material.STEEL),
        unknown);
    assertThat(material(untold))
        .isEqualTo(
            "Material suits the place: ask. Ask where it will be used, and whether couplings are"
                + " dropped on concrete. On a percussion tool it depends on what was not told: hose (wall:"
                + " not known). Ask the makers for what is not known.");
    Proposal indoors = run(
        at(Environment.INDOORS).impactTool(),
        of("nipple", Material.STEEL).asExisting(),
        of("socket", Material.STEEL),
        of("hose plug", Material.STEEL),
        of("tool plug", Material.STEEL),
        unknown);
    assertThat(material(indoors))
        .as("indoors nothing rusts: what is there already is not set apart")
        .isEqualTo(
            "Material suits the place: ask. Indoors on a percussion tool it depends on what was not"
                + " told: hose (wall: not known). Ask the makers for what is not known.");
  }

  @Test
  void plastic_on_a_percussion_tool_is_named_by_body_and_by_wall() {
    Proposal plastic = run(
        at(Environment.INDOORS).impactTool(),
        of("nipple", Material.PLASTIC),
        of("socket", Material.STEEL),
        of("hose plug", Material.STEEL),
        of("tool plug", Material.STEEL),
        Shelf.of(Wall.SMOOTH_PLASTIC, Shelf.hose(of("hose", Material.PLASTIC), 9.5, 10.0)));
    assertThat(material(plastic))
        .isEqualTo(
            "Material suits the place: NOT MET. Not suited indoors on a percussion tool: nipple"
                + " (plastic), hose (end fittings: plastic, wall: plastic). New couplings must be of"
                + " aluminium, brass, hardened steel, plated brass, plated hardened steel, stainless steel or"
                + " steel, and so must adapters and the end fittings of hoses. The wall of the hose must not"
                + " be of plastic.");
    assertThat(material(allOf(at(Environment.INDOORS).impactTool(), Material.STEEL)))
        .isEqualTo("Material suits the place: met. All parts suit indoors on a percussion tool.");
  }

  @Test
  void what_stands_indoors_needs_no_word_and_sparks_need_brass() {
    assertThat(material(allOf(at(Environment.INDOORS), Material.STEEL)))
        .isEqualTo("Material suits the place: does not apply. Any material will do indoors.");
    assertThat(material(allOf(at(Environment.SPARKING_HAZARD), Material.BRASS)))
        .isEqualTo("Material suits the place: met. All parts suit where sparks are a hazard.");
    assertThat(material(allOf(at(Environment.SPARKING_HAZARD), Material.STEEL)))
        .isEqualTo(
            "Material suits the place: NOT MET. Not suited where sparks are a hazard: nipple (steel),"
                + " socket (steel), hose plug (steel), hose (end fittings: steel), tool plug (steel). New"
                + " couplings must be of brass, and so must adapters and the end fittings of hoses.");
    assertThat(material(allOf(at(Environment.SPARKING_HAZARD).dropped(), Material.BRASS)))
        .isEqualTo(
            "Material suits the place: NOT MET. Couplings dropped on concrete need hardened steel, a"
                + " sparking hazard needs brass: one of the two must give.");
  }

  @Test
  void what_is_there_already_is_named_where_it_is_not_known_to_stand_the_weather() {
    Requirement.Builder outdoors = at(Environment.OUTDOORS);
    assertThat(
            material(with(outdoors, Material.BRASS, of("nipple", Material.STEEL).asExisting())))
        .isEqualTo(
            "Material suits the place: met. All parts to buy suit outdoors. There already, so not"
                + " judged for rust and knocks: nipple." + WALL_NOT_JUDGED);
    assertThat(material(with(outdoors, Material.BRASS, facts("nipple").asExisting())))
        .isEqualTo(
            "Material suits the place: met. All parts to buy suit outdoors. There already, so not"
                + " judged for rust and knocks: nipple." + WALL_NOT_JUDGED);
    assertThat(
            material(with(outdoors, Material.BRASS, of("nipple", Material.BRASS).asExisting())))
        .as("brass stands the weather, whoever bought it")
        .isEqualTo("Material suits the place: met. All parts suit outdoors." + WALL_NOT_JUDGED);
  }

  @Test
  void of_what_is_there_already_knocks_count_for_couplings_only() {
    Proposal proposal = run(
        at(Environment.INDOORS).dropped(),
        of("nipple", Material.BRASS).asExisting(),
        of("socket", Material.HARDENED_STEEL),
        of("hose plug", Material.BRASS).asExisting(),
        of("tool plug", Material.HARDENED_STEEL),
        rubber(of("hose", Material.BRASS).asExisting()));
    assertThat(material(proposal))
        .isEqualTo(
            "Material suits the place: met. All parts to buy suit indoors with couplings dropped on"
                + " concrete. There already, so not judged for rust and knocks: hose plug.");
  }

  @Test
  void a_hose_with_bare_ends_that_is_there_already_has_nothing_that_rusts() {
    Part.Hose bare = new Part.Hose(
        facts("bare hose").asExisting(),
        HoseBore.parse("3/8 in"),
        Conduit.of(Length.ofInches(0.375), Length.ofMetres(10.0), Length.ofMillimetres(0.01)),
        End.parse("3/8 in hose"),
        End.parse("3/8 in hose"));
    List<Part> parts = List.of(
        nipple(of("nipple", Material.BRASS)),
        Shelf.socket(of("socket", Material.BRASS), "finch", "3/8 NPT female", 9.0),
        Shelf.socket(of("hose socket", Material.BRASS), "finch", "3/8 in barb", 9.0),
        Shelf.plug(of("hose plug", Material.BRASS), "finch", "3/8 in barb"),
        Shelf.plug(of("tool plug", Material.BRASS), "finch", "1/4 NPT male"),
        bare);
    Proposal proposal = Selection.of(at(Environment.OUTDOORS).build(), Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
    assertThat(proposal.hose("hose")).isEqualTo(bare);
    assertThat(material(proposal))
        .isEqualTo("Material suits the place: met. All parts suit outdoors." + WALL_NOT_JUDGED);
  }

  @Test
  void a_plating_wears_and_is_remarked_of_new_parts_in_the_wet() {
    assertThat(material(allOf(at(Environment.OUTDOORS), Material.PLATED_HARDENED_STEEL)))
        .isEqualTo(
            "Material suits the place: met. All parts suit outdoors. A plating on steel wears off"
                + " where it is knocked: look for rust there." + WALL_NOT_JUDGED);
    assertThat(material(with(
            at(Environment.OUTDOORS),
            Material.BRASS,
            of("nipple", Material.PLATED_HARDENED_STEEL).asExisting())))
        .as("it is not new")
        .isEqualTo("Material suits the place: met. All parts suit outdoors." + WALL_NOT_JUDGED);
    assertThat(material(allOf(at(Environment.INDOORS).dropped(), Material.PLATED_HARDENED_STEEL)))
        .as("it is dry")
        .isEqualTo("Material suits the place: met. All parts suit indoors with couplings dropped on"
            + " concrete.");
  }

  @Test
  void plated_brass_is_remarked_of_where_a_cleaner_is_or_may_be_caustic_and_nowhere_else() {
    String remark = " Plated brass stands a caustic cleaner only while its plating is whole (from"
        + " memory).";
    assertThat(material(allOf(at(Environment.WASH_DOWN_WITH_CAUSTIC), Material.PLATED_BRASS)))
        .isEqualTo(
            "Material suits the place: ask. Where it is washed down with a caustic cleaner it depends"
                + " on what was not told: hose (wall: not known whether it stands the cleaner). Ask the"
                + " makers for what is not known." + remark);
    assertThat(material(allOf(at(Environment.WASH_DOWN), Material.PLATED_BRASS)))
        .isEqualTo("Material suits the place: met. All parts suit where it is washed down." + remark
            + WALL_NOT_JUDGED);
    assertThat(material(allOf(at(Environment.WASH_DOWN_WITH_WATER), Material.PLATED_BRASS)))
        .isEqualTo(
            "Material suits the place: met. All parts suit where it is washed down with water."
                + WALL_NOT_JUDGED);
    assertThat(material(allOf(at(Environment.WASH_DOWN), Material.STAINLESS_STEEL)))
        .isEqualTo("Material suits the place: met. All parts suit where it is washed down."
            + WALL_NOT_JUDGED);
    assertThat(material(allOf(at(Environment.SALT_AIR), Material.PLATED_BRASS)))
        .isEqualTo("Material suits the place: met. All parts suit in salt air." + WALL_NOT_JUDGED);
  }

  @Test
  void the_cleaner_is_asked_for_where_brass_is_told_and_the_makers_where_a_material_is_not() {
    assertThat(material(with(
            at(Environment.WASH_DOWN), Material.STAINLESS_STEEL, of("nipple", Material.BRASS))))
        .isEqualTo(
            "Material suits the place: ask. Where it is washed down it depends on what was not told:"
                + " nipple (brass). Ask whether the cleaner is caustic: that eats plain brass and aluminium"
                + " (from memory)." + WALL_NOT_JUDGED);
    assertThat(material(with(
            at(Environment.WASH_DOWN),
            Material.STAINLESS_STEEL,
            of("nipple", Material.ALUMINIUM).asExisting())))
        .isEqualTo(
            "Material suits the place: ask. Where it is washed down it depends on what was not told:"
                + " nipple (aluminium). Ask whether the cleaner is caustic: that eats plain brass and"
                + " aluminium (from memory). There already, so not judged for rust and knocks: nipple."
                + WALL_NOT_JUDGED);
    assertThat(material(with(at(Environment.WASH_DOWN), Material.STAINLESS_STEEL, facts("nipple"))))
        .isEqualTo(
            "Material suits the place: ask. Where it is washed down it depends on what was not told:"
                + " nipple (not known). Ask the makers for what is not known." + WALL_NOT_JUDGED);
    assertThat(material(with(
            at(Environment.WASH_DOWN_WITH_CAUSTIC),
            Material.STAINLESS_STEEL,
            facts("nipple").asExisting())))
        .isEqualTo(
            "Material suits the place: ask. Where it is washed down with a caustic cleaner it depends"
                + " on what was not told: nipple (not known), hose (wall: not known whether it stands the"
                + " cleaner). Ask the makers for what is not known. There already, so not judged for rust"
                + " and knocks: nipple.");
  }

  @Test
  void new_parts_that_do_not_suit_are_named_with_what_would() {
    assertThat(material(with(
            at(Environment.SALT_AIR).dropped(),
            Material.STAINLESS_STEEL,
            of("nipple", Material.STEEL))))
        .isEqualTo(
            "Material suits the place: NOT MET. Not suited in salt air with couplings dropped on"
                + " concrete: nipple (steel). New couplings must be of stainless steel, adapters and the end"
                + " fittings of hoses of brass, plated brass or stainless steel.");
    assertThat(material(with(
            at(Environment.OUTDOORS).dropped(),
            Material.STAINLESS_STEEL,
            of("nipple", Material.STEEL))))
        .isEqualTo(
            "Material suits the place: NOT MET. Not suited outdoors with couplings dropped on"
                + " concrete: nipple (steel). New couplings must be of plated hardened steel or stainless"
                + " steel, adapters and the end fittings of hoses of brass, plated brass, plated hardened"
                + " steel or stainless steel.");
  }

  /** Indoors nothing rusts, so that a nipple of which nobody knows the material is asked about for one reason only. */
  @Test
  void what_is_there_already_is_asked_about_on_a_percussion_tool_and_not_set_apart_for_rust() {
    assertThat(material(with(
            at(Environment.INDOORS).impactTool(),
            Material.STEEL,
            facts("nipple").asExisting())))
        .isEqualTo(
            "Material suits the place: ask. Indoors on a percussion tool it depends on what was not"
                + " told: nipple (not known). Ask the makers for what is not known.");
  }

  @Test
  void oil_and_dry_air_are_told_with_what_is_there_and_how_to_mark_what_is_new() {
    Requirement.Builder dry = at(Environment.INDOORS).lubrication(Lubrication.DRY);
    String none =
        "Dry and lubricated air stay apart: met. No part is marked as kept for other than ";
    assertThat(said(allOf(dry, Material.STEEL), Rule.AIR_KEPT_APART))
        .isEqualTo(none + "dry air. Mark the new ones as your shop does.");
    assertThat(said(
            with(
                at(Environment.INDOORS).lubrication(Lubrication.DRY).marking("a blue band"),
                Material.STEEL,
                of("nipple", Material.STEEL).asExisting()),
            Rule.AIR_KEPT_APART))
        .isEqualTo(none
            + "dry air. There already, and not marked for either kind: nipple; see that no oiled"
            + " air ever went through. Mark the new ones: a blue band.");
    assertThat(said(
            with(
                dry,
                Material.STEEL,
                of("nipple", Material.STEEL).asExisting().withLubrication(Lubrication.DRY)),
            Rule.AIR_KEPT_APART))
        .as("it is marked")
        .isEqualTo(none + "dry air. Mark the new ones as your shop does.");
    assertThat(said(
            with(
                at(Environment.INDOORS).lubrication(Lubrication.LUBRICATED),
                Material.STEEL,
                of("nipple", Material.STEEL).asExisting()),
            Rule.AIR_KEPT_APART))
        .as("oil does no harm to what was dry")
        .isEqualTo(none + "lubricated air. Mark the new ones as your shop does.");
    Proposal there = run(
        dry,
        of("nipple", Material.STEEL).asExisting().withLubrication(Lubrication.DRY),
        of("socket", Material.STEEL).asExisting().withLubrication(Lubrication.DRY),
        of("hose plug", Material.STEEL).asExisting().withLubrication(Lubrication.DRY),
        of("tool plug", Material.STEEL).asExisting().withLubrication(Lubrication.DRY),
        rubber(of("hose", Material.STEEL).asExisting()));
    assertThat(said(there, Rule.AIR_KEPT_APART))
        .as("nothing is new")
        .isEqualTo(
            none + "dry air. There already, and not marked for either kind: hose; see that no oiled"
                + " air ever went through.");
  }

  @Test
  void what_is_kept_for_the_other_air_is_named_and_asked_about_where_nobody_knows_the_line() {
    PartFacts oiled = of("nipple", Material.STEEL).withLubrication(Lubrication.LUBRICATED);
    PartFacts dry = of("nipple", Material.STEEL).withLubrication(Lubrication.DRY);
    String rule = "Dry and lubricated air stay apart: ";
    assertThat(said(
            with(at(Environment.INDOORS).lubrication(Lubrication.DRY), Material.STEEL, oiled),
            Rule.AIR_KEPT_APART))
        .isEqualTo(rule + "NOT MET. The line is dry, kept for the other kind: nipple.");
    assertThat(said(
            with(at(Environment.INDOORS).lubrication(Lubrication.LUBRICATED), Material.STEEL, dry),
            Rule.AIR_KEPT_APART))
        .isEqualTo(rule + "NOT MET. The line is lubricated, kept for the other kind: nipple.");
    assertThat(said(with(at(Environment.INDOORS), Material.STEEL, dry), Rule.AIR_KEPT_APART))
        .isEqualTo(
            rule + "ask. Ask whether the line has a lubricator: if it has, these must not be used,"
                + " they are kept for dry air: nipple.");
    assertThat(said(with(at(Environment.INDOORS), Material.STEEL, oiled), Rule.AIR_KEPT_APART))
        .isEqualTo(
            rule + "ask. Ask whether the line has a lubricator: if it has none, these must not be"
                + " used, they are kept for lubricated air: nipple.");
  }

  private static Requirement.Builder supplied(double celsius) {
    return at(Environment.INDOORS)
        .supply(
            AirState.of(Shelf.SUPPLY.pressure(), Temperature.ofCelsius(celsius)), Shelf.ATMOSPHERE);
  }

  private static PartFacts from(String id, double coldest, double hottest) {
    return of(id, Material.STEEL)
        .withTemperatures(Temperature.ofCelsius(coldest), Temperature.ofCelsius(hottest));
  }

  private static Proposal allowing(Requirement.Builder job, double coldest, double hottest) {
    return run(
        job,
        from("nipple", -40.0, 100.0),
        from("socket", coldest, hottest),
        from("hose plug", -40.0, 100.0),
        from("tool plug", -40.0, 100.0),
        rubber(from("hose", -40.0, 100.0)));
  }

  @Test
  void temperatures_are_told_with_what_the_job_needs_and_each_part_once() {
    String rule = "Temperature suits the parts: ";
    Temperature low = Temperature.ofCelsius(-10.0);
    Temperature high = Temperature.ofCelsius(60.0);
    assertThat(said(allowing(supplied(20.0), 0.0, 50.0), Rule.TEMPERATURE_SUITS))
        .isEqualTo(
            rule + "does not apply. The air of the supply has 20 °C, which is usual, and the job"
                + " names no other temperatures.");
    assertThat(said(
            allowing(supplied(20.0).temperatures(low, high), -10.0, 60.0), Rule.TEMPERATURE_SUITS))
        .as("at both bounds")
        .isEqualTo(
            rule + "met. The air of the supply has 20 °C, and the job needs -10 °C to 60 °C; the"
                + " makers of all parts allow that.");
    assertThat(said(
            allowing(supplied(20.0).temperatures(low, high), -9.0, 60.0), Rule.TEMPERATURE_SUITS))
        .isEqualTo(rule
            + "NOT MET. The air of the supply has 20 °C, and the job needs -10 °C to 60 °C; not"
            + " allowed by their makers: socket (-9 °C to 60 °C).");
    assertThat(said(
            allowing(supplied(20.0).temperatures(low, high), -10.0, 59.0), Rule.TEMPERATURE_SUITS))
        .isEqualTo(rule
            + "NOT MET. The air of the supply has 20 °C, and the job needs -10 °C to 60 °C; not"
            + " allowed by their makers: socket (-10 °C to 59 °C).");
    assertThat(said(allowing(supplied(70.0), 0.0, 80.0), Rule.TEMPERATURE_SUITS))
        .isEqualTo(
            rule + "met. The air of the supply has 70 °C; the makers of all parts allow that.");
    assertThat(said(
            with(supplied(70.0), Material.STEEL, from("nipple", 0.0, 80.0)),
            Rule.TEMPERATURE_SUITS))
        .isEqualTo(
            rule + "ask. The air of the supply has 70 °C; ask the makers whether they allow that of"
                + " socket, hose plug, hose, tool plug.");
  }

  private static Proposal laid(Requirement.Builder job, Slot... slots) {
    List<Part> parts = List.of(
        Shelf.socket(of("socket", Material.BRASS), "finch", "3/8 NPT female", 9.0),
        Shelf.plug(of("plug", Material.BRASS), "finch", "3/8 NPT female"),
        new Part.Adapter(
            of("reducer", Material.BRASS),
            End.parse("3/8 NPT female"),
            End.parse("1/4 NPT male"),
            nipple(facts("x")).conduit()),
        new Part.Adapter(
            of("close nipple", Material.BRASS),
            End.parse("3/8 NPT male"),
            End.parse("3/8 NPT male"),
            nipple(facts("x")).conduit()),
        rubber(of("hose", Material.BRASS)));
    return Selection.of(
            job.outlet(End.parse("3/8 NPT male"))
                .layout(Layout.of(List.of(slots)))
                .build(),
            Catalogue.of(parts))
        .fold(Selection.Proposals::best, miss -> miss.closest().get(0));
  }

  private static Requirement.Builder laidOut() {
    return Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(8.0), GaugePressure.ofBar(5.0))
        .toolRating(GaugePressure.ofBar(7.5))
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .lubrication(Lubrication.DRY);
  }

  @Test
  void what_sits_on_a_percussion_tool_is_told_by_what_it_is() {
    Slot.Coupling outlet = Slot.coupling("outlet");
    Slot.Coupling tool = Slot.coupling("tool");
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(5.0));
    Slot.Hose whip = Slot.whipHose("whip hose", Length.ofMetres(1.0));
    Slot.InLine valve = Slot.inLine(
        "valve",
        new Part.Device(
            of("valve", Material.BRASS),
            DeviceKind.SHUT_OFF_VALVE,
            Shelf.socket(facts("x"), "finch", "3/8 NPT female", 9.0).capacity(),
            End.parse("3/8 NPT female"),
            End.parse("1/4 NPT male")));
    String rule = "Whip hose before a percussion tool: ";
    assertThat(said(laid(laidOut(), outlet, hose, tool), Rule.WHIP_HOSE))
        .isEqualTo(rule + "does not apply. The job does not say that the tool hammers.");
    assertThat(said(laid(laidOut().impactTool(), outlet, hose, tool), Rule.WHIP_HOSE))
        .isEqualTo(rule
            + "ask. plug would sit on a percussion tool, which shakes a coupling until it wears"
            + " and lets go: a short whip hose must go between. None of these parts is a whip hose. Ask"
            + " whether the tool has one, then tell that, and the end of the whip hose as the tool's"
            + " inlet.");
    assertThat(said(laid(laidOut().impactTool(), outlet, hose, valve), Rule.WHIP_HOSE))
        .isEqualTo(
            rule
                + "ask. valve would sit on a percussion tool, which shakes it until it wears and lets"
                + " go: a short whip hose must go between. None of these parts is a whip hose. Ask whether"
                + " the tool has one, then tell that, and the end of the whip hose as the tool's inlet.");
    assertThat(said(laid(laidOut().impactTool().whipHose(), outlet, hose, tool), Rule.WHIP_HOSE))
        .isEqualTo(rule
            + "met. The tool hangs on a whip hose of its own; no coupling sits straight on it.");
    assertThat(said(laid(laidOut().impactTool(), outlet, hose), Rule.WHIP_HOSE))
        .isEqualTo(rule + "met. hose goes straight to the tool; no coupling sits on it.");
    assertThat(said(laid(laidOut().impactTool(), outlet, hose, tool, whip), Rule.WHIP_HOSE))
        .isEqualTo(rule + "met. hose keeps the couplings from the shaking of the tool.");
    assertThat(said(laid(laidOut().impactTool(), outlet, whip, tool), Rule.WHIP_HOSE))
        .as("a whip hose that stands at the wrong place")
        .isEqualTo(rule
            + "ask. plug would sit on a percussion tool, which shakes a coupling until it wears and lets"
            + " go: a short whip hose must go between. hose stands in front of plug: put the whip hose last"
            + " in the line, next to the tool; or ask whether the tool has one of its own, then tell that,"
            + " and the end of the whip hose as the tool's inlet.");
    String shaken =
        "NOT MET. plug would sit on a percussion tool, which shakes a coupling until it wears and lets"
            + " go: a short whip hose must go between, and the tool has none of its own. ";
    assertThat(said(laid(laidOut().impactTool().noWhipHose(), outlet, hose, tool), Rule.WHIP_HOSE))
        .isEqualTo(rule + shaken + "Put one into the line, last, next to the tool.");
    assertThat(said(laid(laidOut().impactTool().noWhipHose(), outlet, whip, tool), Rule.WHIP_HOSE))
        .isEqualTo(
            rule + shaken
                + "hose stands in front of plug: put the whip hose last in the line, next to the tool.");
    assertThat(said(
            laid(laidOut().impactTool().noWhipHose(), outlet, hose, tool, whip), Rule.WHIP_HOSE))
        .isEqualTo(rule + "met. hose keeps the couplings from the shaking of the tool.");
  }

  @Test
  void a_charge_is_asked_about_of_hoses_only_and_where_sparks_are_a_hazard() {
    String rule = "Hose carries static off: ";
    Requirement.Builder sparks = at(Environment.SPARKING_HAZARD);
    assertThat(said(allOf(at(Environment.OUTDOORS), Material.BRASS), Rule.STATIC_CARRIED_OFF))
        .isEqualTo(
            rule + "does not apply. The job does not say that a spark could ignite something.");
    assertThat(said(allOf(sparks, Material.BRASS), Rule.STATIC_CARRIED_OFF))
        .isEqualTo(rule
            + "ask. Ask the maker whether hose is static-dissipative; sparks are a hazard here.");
    for (boolean dissipates : List.of(true, false)) {
      Proposal told = run(
          sparks,
          of("nipple", Material.BRASS),
          of("socket", Material.BRASS),
          of("hose plug", Material.BRASS),
          of("tool plug", Material.BRASS),
          rubber(of("hose", Material.BRASS).withStaticDissipative(dissipates)));
      assertThat(said(told, Rule.STATIC_CARRIED_OFF))
          .isEqualTo(rule
              + (dissipates
                  ? "met. hose carries a charge off to its end fittings."
                  : "NOT MET. hose is not static-dissipative: it can hold a charge that sparks."));
    }
    assertThat(said(
            laid(laidOut().environment(Environment.SPARKING_HAZARD), Slot.coupling("outlet")),
            Rule.STATIC_CARRIED_OFF))
        .isEqualTo(rule + "does not apply. There is no hose in this run.");
  }
}
