package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.airfit.Pencil;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.Temperature;
import org.airfit.safety.SafetyRules;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a proposal takes beside its parts, on jobs small enough to count it by hand. */
class BillOfMaterialsTest {

  private static final Part.Socket SOCKET =
      Shelf.socket(priced("S", "20 EUR"), "finch", "3/8 NPT female", 9.0);
  private static final Part.Plug HOSE_PLUG =
      Shelf.plug(priced("P1", "3.25 EUR"), "finch", "3/8 NPT female");
  private static final Part.Plug TOOL_PLUG =
      Shelf.plug(priced("P2", "2.75 EUR"), "finch", "1/4 NPT male");
  private static final Part.Hose HOSE = Shelf.hose(priced("H", "40 EUR"), 9.5, 10.0);

  private static final Accessory TAPE =
      new Accessory.ThreadSealant(priced("tape", "1.50 EUR"), NominalThreadSize.TWO);

  private static PartFacts priced(String id, String price) {
    return Shelf.steel(id).withPrice(Money.parse(price));
  }

  private static Proposal proposal(Requirement.Builder job, Part... parts) {
    return Selection.of(job.build(), Catalogue.of(List.of(parts)))
        .fold(Selection.Proposals::best, nothing -> nothing.nearest().get(0));
  }

  private static BillOfMaterials bill(Proposal proposal, Accessory... accessories) {
    return BillOfMaterials.of(proposal, Catalogue.of(List.of(), List.of(accessories)));
  }

  private static Proposal usual() {
    return proposal(Shelf.job(), SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE);
  }

  /** How much of what, on which line, and what it costs. */
  private static List<String> told(BillOfMaterials bill) {
    return bill.lines().stream()
        .map(line -> line.kind() + ": " + line.quantity() + " x " + line.name()
            + line.price().map(price -> ", " + price.format(2)).orElse(", ?"))
        .toList();
  }

  private static BillLine only(BillOfMaterials bill, BillLine.Kind kind) {
    assertThat(bill.lines(kind)).hasSize(1);
    return bill.lines(kind).get(0);
  }

  /** By hand: 2 × 20 + 3.25 + 40 + 2.75 + 1.50 = 87.50. */
  @Test
  void the_bill_of_a_usual_job_has_its_parts_and_one_sealant_for_its_four_taper_joints() {
    BillOfMaterials bill = bill(usual(), TAPE);
    assertThat(told(bill))
        .containsExactly(
            "part: 2 x part S, 40.00 EUR",
            "part: 1 x part P1, 3.25 EUR",
            "part: 1 x part H, 40.00 EUR",
            "part: 1 x part P2, 2.75 EUR",
            "sealant: 1 x part tape, 1.50 EUR");
    assertThat(only(bill, BillLine.Kind.SEALANT).reason())
        .isEqualTo(
            "seals 4 taper threads: outlet to socket, plug to hose, hose to socket, plug to tool; leave the"
                + " first thread bare, so that nothing loose gets into the air");
    assertThat(only(bill, BillLine.Kind.SEALANT).source().orElseThrow().citation())
        .contains("ASME B1.20.1");
    assertThat(bill.total()).contains(Money.parse("87.50 EUR"));
    assertThat(bill.totalInWords()).contains("87.50 EUR. Tax is left to the shop.");
    assertThat(bill.unpriced()).isEmpty();
    assertThat(bill.questions()).isEmpty();
    assertThat(bill).hasToString("Bill of 5 lines: 87.50 EUR. Tax is left to the shop.");
    Pencil.check(bill);
    assertThat(bill.working(UnitSystem.SI).toText()).contains("87.5", "Money is in EUR.");
  }

  @Test
  void what_the_catalogue_lacks_is_named_and_has_no_price() {
    BillOfMaterials bill = bill(usual());
    BillLine sealant = only(bill, BillLine.Kind.SEALANT);
    assertThat(sealant.name()).isEqualTo("thread sealant for 3/8 NPT male, 1/4 NPT male");
    assertThat(sealant.id()).isEmpty();
    assertThat(sealant.reason()).endsWith("gets into the air; the catalogue has none");
    assertThat(bill.unpriced()).containsExactly(sealant);
    assertThat(bill.totalInWords())
        .contains(
            "86.00 EUR without thread sealant for 3/8 NPT male, 1/4 NPT male, of unknown price. Tax is"
                + " left to the shop.");
    assertThat(bill.working().toText())
        .contains("The price of thread sealant for 3/8 NPT male, 1/4 NPT male is not known.");
  }

  @Test
  void what_the_customer_has_costs_nothing_and_is_taken_first() {
    Accessory own = new Accessory.ThreadSealant(
        PartFacts.of("own", "tape of the customer").asExisting(), NominalThreadSize.FOUR);
    BillOfMaterials bill = bill(usual(), TAPE, own);
    assertThat(only(bill, BillLine.Kind.SEALANT).existing()).isTrue();
    assertThat(bill.total()).contains(Money.parse("86 EUR"));
    assertThat(bill.unpriced()).isEmpty();
  }

  @Test
  void without_any_price_there_is_no_total() {
    BillOfMaterials bill = bill(proposal(Shelf.job(), Shelf.parts().toArray(new Part[0])));
    assertThat(bill.total()).isEmpty();
    assertThat(bill.totalInWords()).isEmpty();
    assertThat(bill.working().toText()).contains("No price is known.");
    assertThat(bill).hasToString("Bill of 5 lines");
  }

  /** The nearest miss lacks a bushing: it is named, and the joints it makes are sealed like all others. */
  @Test
  void a_missing_adapter_is_named_by_its_standard_shape_and_its_joints_are_sealed() {
    Requirement.Builder job = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Proposal miss = proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE);
    assertThat(miss.fits()).isFalse();
    BillOfMaterials bill = bill(miss, TAPE);
    BillLine adapter = only(bill, BillLine.Kind.ADAPTER);
    assertThat(adapter.name()).isEqualTo("reducing nipple 1/2 NPT male × 3/8 NPT male");
    assertThat(adapter.reason())
        .isEqualTo(
            "joins outlet to socket; the catalogue has none, and its pressure loss is not reckoned");
    assertThat(adapter.isUnpriced()).isTrue();
    assertThat(only(bill, BillLine.Kind.SEALANT).reason()).startsWith("seals 5 taper threads");
  }

  /** A nipple in the shop is the shop's, though no search found that it joins everything. */
  @Test
  void a_standard_adapter_that_the_catalogue_has_is_not_said_to_be_lacking() {
    Requirement.Builder job = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Proposal miss = proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE);
    Part.Adapter dear = nipple("dear", "9 EUR", 20.0);
    Part.Adapter cheap = nipple("cheap", "3 EUR", 20.0);
    Part.Adapter weak = nipple("weak", "1 EUR", 5.0);
    Part.Adapter other = Shelf.adapter("other", "1/4 NPT male", "1/2 NPT male");
    BillLine adapter = only(
        BillOfMaterials.of(miss, Catalogue.of(List.of(dear, weak, other, cheap))),
        BillLine.Kind.ADAPTER);
    assertThat(adapter.id()).contains("cheap");
    assertThat(adapter.reason())
        .isEqualTo("joins outlet to socket; its pressure loss is not reckoned");
    assertThat(only(
                BillOfMaterials.of(miss, Catalogue.of(List.of(weak, other))), BillLine.Kind.ADAPTER)
            .isUnpriced())
        .isTrue();
  }

  /** What bears no rating is not bought, and what a caustic cleaner eats does not go where it is used. */
  @Test
  void an_adapter_of_the_catalogue_that_is_unmarked_or_not_suited_stays_there() {
    Part.Adapter like = nipple("steel", "9 EUR", 20.0);
    Part.Adapter brass = of(like.facts().withMaterial(Material.BRASS), like);
    Part.Adapter unmarked =
        of(PartFacts.of("unmarked", "nipple").withMaterial(Material.HARDENED_STEEL), like);
    Requirement.Builder job = Shelf.job().outlet(End.parse("1/2 NPT female"));
    assertThat(adapterFrom(job, unmarked).id()).isEmpty();
    assertThat(adapterFrom(job, brass).id()).as("indoors").contains("steel");
    assertThat(adapterFrom(job.environment(Environment.WASH_DOWN_WITH_CAUSTIC), brass)
            .id())
        .as("where a caustic cleaner is used")
        .isEmpty();
  }

  private static BillLine adapterFrom(Requirement.Builder job, Part.Adapter stocked) {
    Proposal miss = proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE);
    return only(BillOfMaterials.of(miss, Catalogue.of(List.of(stocked))), BillLine.Kind.ADAPTER);
  }

  private static Part.Adapter of(PartFacts facts, Part.Adapter like) {
    return new Part.Adapter(facts, like.one(), like.other(), like.conduit());
  }

  private static Part.Adapter nipple(String id, String price, double rated) {
    Part.Adapter like = Shelf.adapter(id, "3/8 NPT male", "1/2 NPT male");
    return new Part.Adapter(
        priced(id, price).withRating(GaugePressure.ofBar(rated)),
        like.one(),
        like.other(),
        like.conduit());
  }

  @Test
  void the_same_missing_adapter_at_both_ends_of_a_hose_is_two_pieces() {
    Part.Hose female = new Part.Hose(
        HOSE.facts(),
        HOSE.bore(),
        HOSE.conduit(),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT female"));
    BillLine adapter = only(
        bill(
            proposal(Shelf.job().toolInlet(End.parse("3/8 NPT male")), SOCKET, HOSE_PLUG, female),
            TAPE),
        BillLine.Kind.ADAPTER);
    assertThat(adapter.name()).isEqualTo("nipple 3/8 NPT male × 3/8 NPT male");
    assertThat(adapter.quantity()).isEqualTo(2);
    assertThat(adapter.reason()).startsWith("joins plug to hose; joins hose to socket; ");
  }

  @Test
  void an_adapter_of_the_catalogue_is_a_line_of_its_own_kind() {
    Requirement.Builder job = Shelf.job().outlet(End.parse("1/2 NPT female"));
    Part.Adapter nipple = Shelf.adapter("nipple", "3/8 NPT male", "1/2 NPT male");
    BillOfMaterials bill = bill(proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE, nipple), TAPE);
    assertThat(only(bill, BillLine.Kind.ADAPTER).id()).contains("nipple");
    assertThat(only(bill, BillLine.Kind.ADAPTER).source()).isEmpty();
  }

  @Test
  void what_nothing_standard_joins_is_a_question() {
    Requirement.Builder job = Shelf.job().outlet(End.parse("400 mm tube"));
    BillOfMaterials bill = bill(proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE), TAPE);
    assertThat(bill.lines(BillLine.Kind.ADAPTER)).isEmpty();
    assertThat(bill.questions())
        .singleElement()
        .asString()
        .startsWith("What goes between 400 mm tube and 3/8 NPT female (outlet to socket)? ")
        .contains("Nothing standard goes between");
  }

  private static Part.Hose cut(PartFacts facts) {
    return new Part.Hose(
        facts,
        HoseBore.parse("3/8 in"),
        HOSE.conduit(),
        End.parse("3/8 in hose"),
        End.parse("3/8 in hose"));
  }

  private static final Part.Adapter TAIL = new Part.Adapter(
      priced("tail", "4 EUR"),
      End.parse("3/8 in barb"),
      End.parse("3/8 NPT male"),
      Conduit.of(Length.ofMillimetres(8.0), Length.ofMillimetres(30.0), Length.ofMillimetres(0.0)));

  private static BillOfMaterials ofCutHose(PartFacts facts, Accessory... accessories) {
    return bill(proposal(Shelf.job(), SOCKET, HOSE_PLUG, TOOL_PLUG, TAIL, cut(facts)), accessories);
  }

  private static Accessory clamp(String id, String price, double from, double to) {
    return new Accessory.HoseClamp(
        priced(id, price), Length.ofMillimetres(from), Length.ofMillimetres(to));
  }

  /** By hand: 40 + 3.25 + 2 × 4 + 25 + 2.75 + 2 × 0.80 + 1.50 = 82.10. */
  @Test
  void a_cut_hose_gets_two_clamps_by_its_outside_diameter() {
    PartFacts hose = priced("cut", "25 EUR").withOutsideDiameter(Length.ofMillimetres(17.5));
    BillOfMaterials bill = ofCutHose(
        hose,
        clamp("small", "0.10 EUR", 8.0, 17.4),
        clamp("fits", "0.80 EUR", 17.5, 19.0),
        clamp("dear", "0.90 EUR", 10.0, 17.5),
        clamp("large", "0.20 EUR", 17.6, 25.0),
        TAPE);
    assertThat(told(bill))
        .containsExactly(
            "part: 2 x part S, 40.00 EUR",
            "part: 1 x part P1, 3.25 EUR",
            "adapter: 2 x part tail, 8.00 EUR",
            "part: 1 x part cut, 25.00 EUR",
            "part: 1 x part P2, 2.75 EUR",
            "clamp: 2 x part fits, 1.60 EUR",
            "sealant: 1 x part tape, 1.50 EUR");
    assertThat(only(bill, BillLine.Kind.CLAMP).reason())
        .isEqualTo(
            "holds part cut on its barb: plug to hose, hose to socket; it measures 17.5 mm outside");
    assertThat(only(bill, BillLine.Kind.SEALANT).reason()).startsWith("seals 4 taper threads");
    assertThat(bill.total()).contains(Money.parse("82.10 EUR"));
    assertThat(bill.questions()).isEmpty();
  }

  @Test
  void without_an_outside_diameter_the_clamp_is_a_question_and_never_a_guess() {
    BillOfMaterials bill = ofCutHose(priced("cut", "25 EUR"), clamp("any", "1 EUR", 1.0, 99.0));
    BillLine clamp = only(bill, BillLine.Kind.CLAMP);
    assertThat(clamp.id()).isEmpty();
    assertThat(clamp.quantity()).isEqualTo(2);
    assertThat(clamp.name()).isEqualTo("clamp or ferrule for 3/8 in hose");
    assertThat(clamp.reason()).endsWith("its outside diameter was not told");
    assertThat(bill.questions())
        .containsExactly(
            "What does part cut measure outside? Clamps and ferrules are chosen by it.");
  }

  @Test
  void a_clamp_that_the_catalogue_lacks_is_named_by_the_diameter_in_the_units_of_the_bill() {
    PartFacts hose = priced("cut", "25 EUR").withOutsideDiameter(Length.ofInches(0.69));
    Proposal proposal = proposal(Shelf.job(), SOCKET, HOSE_PLUG, TOOL_PLUG, TAIL, cut(hose));
    BillOfMaterials bill = BillOfMaterials.of(proposal, Catalogue.of(List.of()), UnitSystem.US);
    assertThat(only(bill, BillLine.Kind.CLAMP).name())
        .isEqualTo("clamp or ferrule for 0.69 in outside");
    assertThat(bill.lines().get(0).reason()).contains(" psi with its plug").doesNotContain("bar");
    assertThat(bill.lines())
        .filteredOn(line -> line.name().equals("part cut"))
        .singleElement()
        .extracting(BillLine::reason)
        .asString()
        .startsWith("32.8 ft of hose with 3/8 in of bore");
  }

  private static Requirement.Builder parallel() {
    return Shelf.job().outlet(End.parse("G 3/8 male")).toolInlet(End.parse("G 1/4 female"));
  }

  private static final Part[] PARALLEL = {
    Shelf.socket(priced("S", "20 EUR"), "finch", "G 3/8 female", 9.0),
    Shelf.plug(priced("P1", "3.25 EUR"), "finch", "G 3/8 female"),
    Shelf.plug(priced("P2", "2.75 EUR"), "finch", "G 1/4 male"),
    new Part.Hose(
        priced("H", "40 EUR"),
        HOSE.bore(),
        HOSE.conduit(),
        End.parse("G 3/8 male"),
        End.parse("G 3/8 male"))
  };

  @Test
  void parallel_threads_get_a_washer_each_by_size_and_no_sealant() {
    BillOfMaterials bill = bill(
        proposal(parallel(), PARALLEL),
        TAPE,
        new Accessory.SealingWasher(priced("W38", "0.30 EUR"), "G3/8"));
    assertThat(bill.lines(BillLine.Kind.SEALANT)).isEmpty();
    assertThat(told(bill).subList(4, 6))
        .containsExactly("seal: 3 x part W38, 0.90 EUR", "seal: 1 x sealing washer for G 1/4, ?");
    assertThat(bill.lines(BillLine.Kind.SEAL).get(0).reason())
        .isEqualTo(
            "seals between the faces: outlet to socket, plug to hose, hose to socket; the thread does not"
                + " seal, and a part that carries its own ring needs none");
    assertThat(bill.lines(BillLine.Kind.SEAL).get(1).reason()).endsWith("the catalogue has none");
  }

  /** Dryseal threads, push-in ends and swivel seats need nothing. */
  @ParameterizedTest
  @CsvSource({
    "1/4 NPTF female, 1/4 NPTF male, 3",
    "-6 flare male, -6 flare nut, 3",
    "9/16-18 O-ring port, 9/16-18 male with O-ring, 3",
    "8 mm push-in, 8 mm tube, 3",
    "1/4 NPSM female, 1/4 NPT male, 3",
    "1/4 NPT female, 1/4 NPT male, 4"
  })
  void what_seals_by_itself_gets_neither_sealant_nor_washer(String inlet, String plug, int sealed) {
    Part.Plug tool = Shelf.plug(priced("P2", "2.75 EUR"), "finch", plug);
    BillOfMaterials bill = bill(
        proposal(Shelf.job().toolInlet(End.parse(inlet)), SOCKET, HOSE_PLUG, tool, HOSE), TAPE);
    assertThat(only(bill, BillLine.Kind.SEALANT).reason())
        .startsWith("seals " + sealed + " taper threads");
    assertThat(bill.lines(BillLine.Kind.SEAL)).isEmpty();
  }

  @Test
  void an_m5_stud_gets_its_own_washer_and_claws_a_clip() {
    Part.Plug stud = Shelf.plug(priced("P2", "2.75 EUR"), "finch", "M5 male");
    BillOfMaterials small = bill(
        proposal(Shelf.job().toolInlet(End.parse("M5 female")), SOCKET, HOSE_PLUG, stud, HOSE),
        new Accessory.SealingWasher(priced("W5", "0.10 EUR"), "M5"),
        new Accessory.SealingWasher(priced("W50", "0.05 EUR"), "M50"));
    assertThat(only(small, BillLine.Kind.SEAL).id()).contains("W5");
    Part.Plug claw = Shelf.plug(priced("P2", "2.75 EUR"), "finch", "two-lug claw");
    BillOfMaterials large = bill(
        proposal(Shelf.job().toolInlet(End.parse("two-lug claw")), SOCKET, HOSE_PLUG, claw, HOSE),
        TAPE);
    assertThat(only(large, BillLine.Kind.RETAINER).name())
        .startsWith("retaining clip or pin for a two-lug claw");
    assertThat(only(large, BillLine.Kind.RETAINER).reason())
        .isEqualTo("keeps the halves from parting by themselves: plug to tool");
  }

  /** To size 2 tape, above it only what is made for it: the cheaper tape must not be sold for a thread of 3. */
  @Test
  void a_sealant_goes_no_further_than_the_size_it_is_for() {
    Requirement.Builder job = Shelf.job().outlet(End.parse("3 NPT female"));
    Part.Adapter reducer = Shelf.adapter("reducer", "3 NPT male", "3/8 NPT male");
    Proposal proposal = proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE, reducer);
    Accessory paste = new Accessory.ThreadSealant(priced("paste", "9 EUR"), NominalThreadSize.FOUR);
    assertThat(told(bill(proposal, TAPE, paste)))
        .as("one that does for all")
        .contains("sealant: 1 x part paste, 9.00 EUR")
        .noneMatch(line -> line.contains("tape"));
    assertThat(told(bill(proposal, TAPE)))
        .contains(
            "sealant: 1 x thread sealant for 3 NPT male, ?", "sealant: 1 x part tape, 1.50 EUR");
  }

  private static Accessory restraint(String from, String to) {
    return new Accessory.WhipRestraint(
        priced("whip", "8 EUR"), HoseBore.parse(from), HoseBore.parse(to));
  }

  private static Proposal ofBore(Requirement.Builder job, String bore) {
    HoseBore named = HoseBore.parse(bore);
    return proposal(
        job,
        SOCKET,
        HOSE_PLUG,
        TOOL_PLUG,
        new Part.Hose(
            priced("H", "40 EUR"),
            named,
            Conduit.of(named.nominal(), Length.ofMetres(10.0), Length.ofMillimetres(0.01)),
            End.parse("3/8 NPT male"),
            End.parse("3/8 NPT male")));
  }

  /** 29 CFR 1926.302(b)(7): "exceeding 1/2-inch"; the restraint at the same door is common practice. */
  @ParameterizedTest
  @CsvSource({"3/8 in, 0, 0", "1/2 in, 0, 0", "12.8 mm, 2, 1", "3/4 in, 2, 1"})
  void a_hose_of_more_than_half_an_inch_gets_restraints_and_a_fuse(
      String bore, int restraints, int fuses) {
    BillOfMaterials bill = bill(ofBore(Shelf.job(), bore), restraint("3/8 in", "1 in"));
    assertThat(bill.lines(BillLine.Kind.WHIP_RESTRAINT).stream()
            .mapToInt(BillLine::quantity)
            .sum())
        .isEqualTo(restraints);
    assertThat(bill.lines(BillLine.Kind.HOSE_FUSE)).hasSize(fuses);
  }

  @Test
  void the_restraint_is_practice_and_the_fuse_is_law() {
    BillOfMaterials bill = bill(ofBore(Shelf.job(), "3/4 in"), restraint("3/8 in", "1/2 in"));
    BillLine restraint = only(bill, BillLine.Kind.WHIP_RESTRAINT);
    assertThat(restraint.name()).isEqualTo("whip restraint for 3/4 in hose");
    assertThat(restraint.quantity()).isEqualTo(2);
    assertThat(restraint.reason())
        .isEqualTo(
            "holds the hose if a joint of it parts: outlet to hose, hose to tool; its bore is more than 1/2 in"
                + " (12.7 mm), and practice restrains such a hose; the catalogue has none");
    assertThat(restraint.source().orElseThrow().toString()).contains("common practice");
    BillLine fuse = only(bill, BillLine.Kind.HOSE_FUSE);
    assertThat(fuse.source().orElseThrow().citation()).contains("29 CFR 1926.302(b)(7)");
    assertThat(fuse.name()).isEqualTo("hose fuse at the source");
  }

  @Test
  void a_hose_fuse_in_the_line_is_not_asked_for_again_and_no_law_asks_where_none_holds() {
    Part.Device fuse = new Part.Device(
        priced("F", "30 EUR"),
        DeviceKind.HOSE_FUSE,
        SOCKET.capacity(),
        End.parse("3/8 NPT female"),
        End.parse("3/8 NPT male"));
    Requirement.Builder withFuse = slots(
        Slot.inLine("fuse", fuse),
        Slot.coupling("outlet"),
        Slot.hose("hose", Length.ofMetres(10.0)),
        Slot.coupling("tool"));
    assertThat(bill(ofBore(withFuse, "3/4 in")).lines(BillLine.Kind.HOSE_FUSE)).isEmpty();
    assertThat(bill(ofBore(Shelf.job().rules(SafetyRules.bundled().in("AU")), "3/4 in"))
            .lines(BillLine.Kind.HOSE_FUSE))
        .isEmpty();
  }

  /** Where only a coupling stands between two hoses one restraint spans it: three for two hoses in a row. */
  @Test
  void two_hoses_in_a_row_have_three_joints_to_restrain() {
    Requirement.Builder job = slots(
        Slot.coupling("outlet"),
        Slot.hose("first", Length.ofMetres(5.0)),
        Slot.coupling("middle"),
        Slot.hose("second", Length.ofMetres(5.0)),
        Slot.coupling("tool"));
    BillLine restraint = only(
        bill(ofBore(job, "3/4 in"), restraint("1/2 in", "1 in")), BillLine.Kind.WHIP_RESTRAINT);
    assertThat(restraint.quantity()).isEqualTo(3);
    assertThat(restraint.price()).contains(Money.parse("24 EUR"));
    assertThat(restraint.reason())
        .contains(
            "parts: outlet to first hose, first hose to second hose, second hose to tool; its bore");
  }

  private static Requirement.Builder slots(Slot... slots) {
    Requirement usual = Shelf.job().build();
    return Requirement.forTool(usual.demand(), usual.least())
        .toolInlet(End.parse("1/4 NPT female"))
        .supply(Shelf.SUPPLY, Shelf.ATMOSPHERE)
        .outlet(End.parse("3/8 NPT male"))
        .layout(Layout.of(List.of(slots)));
  }

  private static Requirement.Builder piped() {
    return Shelf.job()
        .pipe(
            "drop",
            Conduit.of(
                Length.ofMillimetres(16.0), Length.ofMetres(6.0), Length.ofMillimetres(0.05)));
  }

  private static Proposal of(Requirement.Builder job) {
    return proposal(job, SOCKET, HOSE_PLUG, TOOL_PLUG, HOSE);
  }

  @Test
  void a_drain_is_needed_behind_a_pipe_without_a_dryer_and_asked_about_where_nobody_told() {
    Accessory valve = new Accessory.Drain(priced("valve", "12 EUR"));
    assertThat(bill(of(Shelf.job().dryer(false)), valve).lines(BillLine.Kind.DRAIN))
        .as("no pipe")
        .isEmpty();
    assertThat(bill(of(piped().dryer(true)), valve).lines(BillLine.Kind.DRAIN)).isEmpty();
    BillLine drain = only(bill(of(piped().dryer(false)), valve), BillLine.Kind.DRAIN);
    assertThat(drain.id()).contains("valve");
    assertThat(drain.source().orElseThrow().toString()).contains("a tee and a drain valve");
    BillLine missing = only(bill(of(piped().dryer(false))), BillLine.Kind.DRAIN);
    assertThat(missing.name()).isEqualTo("drain valve");
    assertThat(missing.reason()).isEqualTo(drain.reason() + "; the catalogue has none");
    BillOfMaterials untold = bill(of(piped()), valve);
    assertThat(untold.lines(BillLine.Kind.DRAIN)).isEmpty();
    assertThat(untold.questions())
        .singleElement()
        .asString()
        .startsWith("Is there a dryer behind the compressor?");
  }

  @Test
  void what_was_asked_for_is_on_the_bill_and_nothing_that_was_not() {
    Accessory[] shelf = {
      new Accessory.EndCap(priced("cap", "0.75 EUR"), "finch"),
      new Accessory.EndCap(priced("other cap", "0.05 EUR"), "wren"),
      new Accessory.HoseHook(priced("hook", "6 EUR")),
      restraint("1/4 in", "1/2 in"),
      TAPE
    };
    assertThat(told(bill(usual(), shelf))).hasSize(5);
    BillOfMaterials all = bill(
        of(Shelf.job().extras(Set.of(Extra.END_CAP, Extra.HOOK, Extra.WHIP_RESTRAINT))), shelf);
    assertThat(told(all).subList(5, 8))
        .containsExactly(
            "whip restraint: 2 x part whip, 16.00 EUR",
            "end cap: 2 x part cap, 1.50 EUR",
            "hook: 1 x part hook, 6.00 EUR");
    assertThat(all.lines().subList(5, 8))
        .allSatisfy(line -> assertThat(line.reason()).endsWith("as asked for"));
    assertThat(all.total()).as("87.50 + 16 + 1.50 + 6").contains(Money.parse("111 EUR"));
    BillOfMaterials none = bill(of(Shelf.job().extras(Set.of(Extra.END_CAP, Extra.HOOK))));
    assertThat(told(none).subList(5, 7))
        .containsExactly(
            "end cap: 2 x end cap for plugs of profile finch, ?", "hook: 1 x hose hook, ?");
    assertThat(none.lines().subList(5, 7))
        .allSatisfy(
            line -> assertThat(line.reason()).endsWith("as asked for; the catalogue has none"));
  }

  @Test
  void a_percussion_tool_without_a_whip_hose_is_asked_about() {
    assertThat(bill(of(Shelf.job().impactTool())).questions())
        .singleElement()
        .asString()
        .startsWith("Does the percussion tool hang on a whip hose?");
    assertThat(bill(of(Shelf.job().impactTool().whipHose())).questions()).isEmpty();
    assertThat(bill(of(Shelf.job().impactTool().noWhipHose())).questions())
        .as("the tool has none, as was told")
        .isEmpty();
  }

  @Test
  void an_accessory_too_weak_or_for_other_temperatures_is_not_taken() {
    PartFacts facts = PartFacts.of("tape", "tape").withPrice(Money.parse("1 EUR"));
    Requirement.Builder job = Shelf.job()
        .highest(GaugePressure.ofBar(9.0))
        .temperatures(Temperature.ofCelsius(-10.0), Temperature.ofCelsius(40.0));
    assertThat(found(job, facts.withRating(GaugePressure.ofBar(9.0)))).isTrue();
    assertThat(found(job, facts.withRating(GaugePressure.ofBar(8.9)))).isFalse();
    assertThat(found(job, between(facts, -10.0, 40.0))).isTrue();
    assertThat(found(job, between(facts, -9.9, 40.0))).isFalse();
    assertThat(found(job, between(facts, -10.0, 39.9))).isFalse();
    assertThat(found(Shelf.job(), between(facts, 20.0, 30.0))).as("nobody told").isTrue();
  }

  private static PartFacts between(PartFacts facts, double coldest, double hottest) {
    return facts.withTemperatures(Temperature.ofCelsius(coldest), Temperature.ofCelsius(hottest));
  }

  private static boolean found(Requirement.Builder job, PartFacts facts) {
    Accessory tape = new Accessory.ThreadSealant(facts, NominalThreadSize.FOUR);
    return only(bill(of(job), tape), BillLine.Kind.SEALANT).facts().isPresent();
  }

  @Test
  void bills_are_equal_by_what_they_say() {
    assertThat(bill(usual(), TAPE))
        .isEqualTo(bill(usual(), TAPE))
        .hasSameHashCodeAs(bill(usual(), TAPE))
        .isNotEqualTo(bill(usual()))
        .isNotEqualTo(bill(of(piped()), TAPE));
    assertThat(bill(usual(), TAPE).lines().get(0))
        .hasToString("2 x part S (S): " + bill(usual(), TAPE).lines().get(0).reason());
  }

  @Test
  void accessories_are_checked_at_the_door() {
    PartFacts facts = Shelf.steel("x");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> clamp("x", "1 EUR", 0.0, 5.0))
        .withMessage(
            "outside diameters that x holds must be above 0 and in order, were 0 mm to 5 mm");
    assertThatIllegalArgumentException().isThrownBy(() -> clamp("x", "1 EUR", 5.1, 5.0));
    assertThat(
            ((Accessory.HoseClamp) clamp("x", "1 EUR", 5.0, 5.0)).holds(Length.ofMillimetres(5.0)))
        .isTrue();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> restraint("1 in", "1/2 in"))
        .withMessage("hoses that whip is for must be in order, were 1 in bore to 1/2 in bore");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Accessory.EndCap(facts, " "))
        .withMessage("profile of end cap x must not be blank, was \" \"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> facts.withOutsideDiameter(Length.ofMillimetres(0.0)))
        .withMessage("outside diameter of part x must be above 0 mm, was 0 mm");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> facts.withCost(Money.parse("-1 EUR")))
        .withMessageStartingWith("cost of part x must be in [0, 10^8)");
    List<Accessory> twins = new ArrayList<>(List.of(TAPE, TAPE));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Catalogue.of(List.of(), twins))
        .withMessageStartingWith("id of a part must be unique in its catalogue, was tape");
    Accessory foreign = new Accessory.Drain(facts.withCost(Money.parse("1 USD")));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Catalogue.of(List.of(SOCKET), List.of(foreign)))
        .withMessageContaining("20 EUR for part S (S) and 1 USD for part x (x)");
    assertThat(Catalogue.of(List.of(SOCKET), List.of(TAPE)))
        .hasToString("Catalogue of 1 parts and 1 accessories")
        .isNotEqualTo(Catalogue.of(List.of(SOCKET)));
    assertThat(Catalogue.of(List.of(SOCKET), List.of(TAPE)).accessories()).containsExactly(TAPE);
    assertThat(Extra.parse(" Whip Restraint ")).isEqualTo(Extra.WHIP_RESTRAINT);
  }

  /** A proposal, a requirement and a year are made by hand only, so that nothing else tries these doors. */
  @Test
  @SuppressWarnings("NullAway")
  void nulls_are_refused_by_name() {
    Catalogue none = Catalogue.of(List.of());
    Requirement job = Shelf.job().build();
    assertThatNullPointerException()
        .isThrownBy(() -> BillOfMaterials.of(null, none))
        .withMessage("proposal");
    assertThatNullPointerException()
        .isThrownBy(() -> BillOfMaterials.of(usual(), null))
        .withMessage("catalogue");
    assertThatNullPointerException()
        .isThrownBy(() -> BillOfMaterials.of(usual(), none, null))
        .withMessage("units");
    assertThatNullPointerException().isThrownBy(() -> Offers.of(null, none)).withMessage("job");
    assertThatNullPointerException()
        .isThrownBy(() -> Offers.of(job, null))
        .withMessage("catalogue");
    assertThatNullPointerException()
        .isThrownBy(() -> Offers.of(job, none, null))
        .withMessage("year");
  }
}
