package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.Rating;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitName;
import org.airfit.line.ConduitRange;
import org.airfit.line.FittingList;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlowFieldsTest {

  private static final Length TEN = Length.ofMetres(10.0);

  /** The field "capacity" of a part. */
  private static Field capacity(Object value) throws WrongFileException {
    return Field.of(Document.of("shop.json", Map.of("capacity", value)))
        .field("capacity", "a capacity");
  }

  private static Field pipe(Object... namesAndValues) throws WrongFileException {
    Map<String, Object> pipe = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      pipe.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    pipe.putIfAbsent("length", "10 m");
    return Field.of(Document.of("job.json", Map.of("pipe", pipe))).field("pipe", "a pipe");
  }

  private static void refused(Field pipe, String message) {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> FlowFields.conduitRange(pipe))
        .withMessage("job.json: " + message);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Cv 1.4",
        "40 scfm at 100 psig, 5 psi drop",
        "40 scfm full flow at 90 psig",
        "S 12 mm2",
        "C 6 dm3/(s bar)",
        "C 6 dm3/(s bar), b 0.3",
        "20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop"
      })
  void a_capacity_may_be_written_as_a_catalogue_prints_it(String text) throws WrongFileException {
    assertThat(FlowFields.capacityRange(capacity(text)))
        .isEqualTo(Rating.parse(text).capacity());
  }

  @Test
  void an_object_still_tells_a_capacity_and_without_b_a_range() throws WrongFileException {
    SonicConductance c = SonicConductance.parse("8 dm3/(s bar)");
    Map<String, Object> told = Map.of("conductance", "8 dm3/(s bar)", "criticalPressureRatio", 0.3);
    assertThat(FlowFields.capacity(capacity(told))).isEqualTo(FlowCapacity.of(c, 0.3));
    assertThat(FlowFields.capacityRange(capacity(told)).isExact()).isTrue();
    assertThat(FlowFields.capacityRange(capacity(Map.of("conductance", "8 dm3/(s bar)"))))
        .isEqualTo(CapacityRange.ofConductance(c));
    Map<String, Object> rating = new LinkedHashMap<>(
        Map.of("flow", "34 scfm", "inlet", "7.2 bar(a)", "drop", "5 psi", "temperature", "20 °C"));
    FreeAirFlow flow = FreeAirFlow.parse("34 scfm");
    AbsolutePressure inlet = AbsolutePressure.ofBar(7.2);
    PressureDrop drop = PressureDrop.ofPsi(5.0);
    Temperature shop = Temperature.ofCelsius(20.0);
    assertThat(FlowFields.capacityRange(capacity(rating)))
        .isEqualTo(CapacityRange.ofRatedFlow(flow, inlet, drop, shop));
    rating.put("criticalPressureRatio", 0.3);
    assertThat(FlowFields.capacity(capacity(rating)))
        .isEqualTo(FlowCapacity.ofRatedFlow(flow, inlet, drop, shop, 0.3));
  }

  @Test
  void one_capacity_is_read_from_a_text_that_leaves_nothing_open() throws WrongFileException {
    assertThat(FlowFields.capacity(capacity("C 6 dm3/(s bar), b 0.3")))
        .isEqualTo(FlowCapacity.of(SonicConductance.parse("6 dm3/(s bar)"), 0.3));
  }

  @Test
  void a_rating_that_is_only_a_range_says_why_it_is_none_where_one_capacity_is_wanted() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> FlowFields.capacity(capacity("C 6 dm3/(s bar)")))
        .withMessage(
            "shop.json: capacity: is only a range, C 6 dm³/(s·bar), b 0 to C 6 dm³/(s·bar), b 0.5283 (b not"
                + " told: from 0 to 0.528, that of a loss-free nozzle); accepted here: one capacity, so add b to it, or"
                + " xT to Cv or Kv");
  }

  @Test
  void a_mistyped_rating_is_told_with_its_field() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> FlowFields.capacityRange(capacity("40 scfm, 5 psi drop")))
        .withMessageStartingWith(
            "shop.json: capacity: \"40 scfm, 5 psi drop\": a pressure drop without the pressure in"
                + " front of the part: add it, such as \"at 100 psig\", at position 0; accepted: \"Cv 1.4\", ");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> FlowFields.capacityRange(capacity(Map.of("conductance", "8"))))
        .withMessageStartingWith("shop.json: capacity.conductance: \"8\": the unit is missing");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> FlowFields.capacityRange(capacity(8)))
        .withMessage("shop.json: capacity: was 8; an object in braces is wanted: a capacity");
  }

  @Test
  void a_wall_by_its_whole_name_has_one_roughness_as_before() throws WrongFileException {
    ConduitRange range = FlowFields.conduitRange(pipe("bore", "21 mm", "wall", "Commercial Steel"));
    assertThat(range)
        .isEqualTo(ConduitRange.exactly(
            Conduit.of(Length.ofMillimetres(21.0), TEN, Wall.COMMERCIAL_STEEL)));
    ConduitRange rougher = FlowFields.conduitRange(
        pipe("bore", "21 mm", "wall", "commercial steel", "roughness", "0.1 mm"));
    assertThat(rougher.least().roughness()).isEqualTo(Length.ofMillimetres(0.1));
    assertThat(rougher.least().wall()).contains(Wall.COMMERCIAL_STEEL);
    assertThat(FlowFields.conduitRange(pipe("bore", "21 mm", "roughness", "0.1 mm"))
            .isExact())
        .isTrue();
  }

  @Test
  void a_wall_as_people_call_it_is_a_range_of_which_the_worst_end_is_judged()
      throws WrongFileException {
    Length bore = Length.ofMillimetres(9.5);
    ConduitRange hose = ConduitName.parse("rubber hose").over(bore, TEN);
    assertThat(FlowFields.conduitRange(pipe("bore", "9.5 mm", "wall", "rubber hose")))
        .isEqualTo(hose);
    assertThat(FlowFields.conduit(pipe("bore", "9.5 mm", "wall", "rubber hose")))
        .isEqualTo(hose.least());
    assertThat(FlowFields.conduitRange(pipe("wall", "1/4 in hose, old")))
        .isEqualTo(ConduitName.parse("1/4 in hose, old").over(TEN));
    ConduitRange measured = FlowFields.conduitRange(
        pipe("bore", "9.5 mm", "wall", "rubber hose", "roughness", "0.02 mm"));
    assertThat(measured.isExact()).isTrue();
    assertThat(measured.least().roughness()).isEqualTo(Length.ofMillimetres(0.02));
    assertThat(measured.least().wall()).contains(Wall.SMOOTH_RUBBER_HOSE);
  }

  @Test
  void a_size_by_name_tells_the_bore_and_a_measured_bore_comes_first() throws WrongFileException {
    assertThat(FlowFields.conduitRange(pipe("size", "1/2 in sch 40")))
        .isEqualTo(ConduitName.parse("1/2 in sch 40").over(TEN));
    ConduitRange steel =
        FlowFields.conduitRange(pipe("size", "1/2 in sch 40", "wall", "commercial steel"));
    assertThat(steel.isExact()).isTrue();
    assertThat(steel.least().bore())
        .isEqualTo(ConduitName.parse("1/2 in sch 40").bore().orElseThrow().least());
    assertThat(steel.least().roughness()).isEqualTo(Wall.COMMERCIAL_STEEL.roughness());
    assertThat(FlowFields.conduitRange(pipe("size", "1/4 in", "wall", "rubber hose")))
        .isEqualTo(ConduitName.parse("1/4 in rubber hose").over(TEN));
    ConduitRange hose =
        FlowFields.conduitRange(pipe("size", "1/4 in hose", "roughness", "0.02 mm"));
    assertThat(hose.least().bore()).isEqualTo(Length.ofMillimetres(5.6));
    assertThat(hose.most().bore()).isEqualTo(Length.ofMillimetres(7.2));
    assertThat(hose.least().roughness()).isEqualTo(hose.most().roughness());
    assertThat(FlowFields.conduitRange(pipe("size", "1/4 in hose", "bore", "6.1 mm"))
            .least()
            .bore())
        .isEqualTo(Length.ofMillimetres(6.1));
  }

  @Test
  void every_wall_of_a_file_may_stand_beside_a_size() throws WrongFileException {
    for (String wall :
        List.of("commercial steel", "galvanized", "stainless steel", "steel in air service")) {
      assertThat(
              FlowFields.conduitRange(pipe("size", "1 in sch 40", "wall", wall)).isExact())
          .isTrue();
    }
    assertThat(FlowFields.conduitRange(pipe("size", "1/2 in", "wall", "drawn copper or brass"))
            .least()
            .wall())
        .contains(Wall.DRAWN_COPPER_OR_BRASS);
    assertThat(FlowFields.conduitRange(pipe("size", "1/4 in", "wall", "smooth rubber hose"))
            .least()
            .wall())
        .contains(Wall.SMOOTH_RUBBER_HOSE);
  }

  @Test
  void fittings_are_a_number_or_are_counted() throws WrongFileException {
    Length bore = Length.ofMillimetres(21.0);
    ConduitRange counted = FlowFields.conduitRange(
        pipe("bore", "21 mm", "wall", "commercial steel", "fittings", "4 elbows, 1 tee"));
    FittingList list = FittingList.parse("4 elbows, 1 tee");
    assertThat(counted.least().fittingLoss()).isEqualTo(list.mostLoss(bore));
    assertThat(counted.most().fittingLoss()).isEqualTo(list.leastLoss(bore));
    ConduitRange number =
        FlowFields.conduitRange(pipe("bore", "21 mm", "wall", "rubber hose", "fittings", 2.5));
    assertThat(number.least().fittingLoss()).isEqualTo(2.5);
    assertThat(number.most().fittingLoss()).isEqualTo(2.5);
    Field row = Field.ofRow(
        "net.csv",
        3,
        Map.of("bore", "21 mm", "length", "10 m", "roughness", "0.1 mm", "fittings", "2.5"));
    assertThat(FlowFields.conduit(row).fittingLoss()).isEqualTo(2.5);
    Field words = Field.ofRow(
        "net.csv",
        3,
        Map.of(
            "bore",
            "21 mm",
            "length",
            "10 m",
            "roughness",
            "0.1 mm",
            "fittings",
            "4 elbows, 1 tee"));
    assertThat(FlowFields.conduit(words).fittingLoss()).isEqualTo(list.mostLoss(bore));
  }

  @Test
  void a_mistake_names_the_field_and_what_is_accepted() throws WrongFileException {
    refused(
        pipe("bore", "9 mm", "wall", "rubbr hose"),
        "pipe.wall: \"rubbr hose\": \"rubbr\" tells nothing of a pipe, tube or hose; accepted: drawn copper or"
            + " brass, drawn aluminium, smooth plastic, stainless steel, commercial steel, lined steel, steel in air"
            + " service, galvanized, asphalted cast iron, cast iron, smooth rubber hose, corrugated rubber hose, or"
            + " words such as \"rubber hose\", \"steel pipe, old\", \"hose\"");
    refused(
        pipe("size", "1/2 in sch 41"),
        "pipe.size: \"1/2 in sch 41\": no steel pipe of this size and schedule stands in the tables: leave the size out"
            + " and give the bore; accepted: a size by name, such as \"1/2 in sch 40\", \"1/4 in hose\" or \"8 x 1 mm"
            + " tube\"");
    refused(
        pipe("size", "hose"),
        "pipe.size: \"hose\": the size is missing; accepted: a size by name, such as \"1/2 in sch 40\", \"1/4 in hose\""
            + " or \"8 x 1 mm tube\"");
    refused(
        pipe("wall", "rubber hose"),
        "pipe.bore: is missing; accepted: a length such as \"12.7 mm\" or \"1/2 in\"; or the size, such as \"1/2 in sch"
            + " 40\"");
    refused(
        pipe("bore", "9 mm"),
        "pipe.roughness: is missing; accepted: the roughness of the wall, such as \"0.045 mm\" for new steel pipe; or"
            + " give the wall");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() ->
            FlowFields.conduitRange(pipe("bore", "9 mm", "wall", "hose", "fittings", "4 elbos")))
        .withMessageStartingWith(
            "job.json: pipe.fittings: \"4 elbos\": \"elbos\" is no fitting known here; accepted:"
                + " the sum of K as a number, or a list such as \"4 elbows, 1 tee, 1 ball valve\" of elbow,");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(
            () -> FlowFields.conduitRange(pipe("bore", "9 mm", "wall", "hose", "fittings", -1.0)))
        .withMessage(
            "job.json: pipe.fittings: sum of fitting losses K must be in [0, 1e6], was -1.0");
  }
}
