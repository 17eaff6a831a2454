package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.Rating;
import org.airfit.plug.DemoProfiles;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.select.Catalogue;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** One item of what is connected, read by itself, is what a job with that item makes of it. */
class ConnectedTest {

  private static final ShopCatalogue NONE =
      new ShopCatalogue("none", DemoProfiles.birds(), Catalogue.of(List.of()), List.of());

  private static final List<Map<String, Object>> ITEMS = List.of(
      Map.of("name", "coupling", "capacity", "C 6 dm3/(s bar), b 0.3"),
      Map.of("name", "regulator", "capacity", "C 9 dm3/(s bar), b 0.3", "set", "6 bar(g)"),
      Map.of("name", "hose", "bore", "3/8 in", "length", "25 ft", "wall", "rubber hose"));

  private static final Run SUPPLY = Run.from(
      AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
      AbsolutePressure.STANDARD_ATMOSPHERE);

  private static Connected read(Map<String, Object> item) throws WrongFileException {
    return Connected.read(Document.of("item", item), NONE);
  }

  @Test
  void items_one_by_one_make_the_run_of_a_job() throws Exception {
    Map<String, Object> job = Map.of(
        "job",
        "a drop",
        "customer",
        "nobody",
        "supply",
        Map.of("pressure", "7 bar(g)"),
        "line",
        List.of(Map.of("kind", "outlet", "end", "1/2 NPT female"), Map.of("kind", "coupling")),
        "now",
        ITEMS,
        "tool",
        Map.of("name", "t", "air", "5 L/s ANR", "pressure", "5 bar(g)", "inlet", "G 1/4 female"));
    Job read = JobFile.read(Document.of("job", job), NONE);
    Run run = read.requirement().toOutlet();
    for (Map<String, Object> item : ITEMS) {
      run = read(item).addTo(run);
    }
    assertThat(run).isEqualTo(read.now().orElseThrow().run());
    assertThat(run.names()).containsExactly("coupling", "regulator", "hose");
  }

  /** One reader for parts and for what is connected: a rating that is only a range is one here too. */
  @Test
  void a_rating_is_read_as_a_catalogue_prints_it_and_tells_what_was_taken() throws Exception {
    for (String printed : List.of(
        "Cv 1.4",
        "Kv 1.2",
        "40 scfm at 100 psig, 5 psi drop",
        "40 scfm full flow at 90 psig",
        "C 6 dm3/(s bar)",
        "S 12 mm2",
        "20 scfm at 100 psig, 1 psi drop; 40 scfm, 4 psi drop")) {
      Connected connected = read(Map.of("name", "coupling", "capacity", printed));
      CapacityRange told = Rating.parse(printed).capacity();
      assertThat(connected.isExact()).as(printed).isEqualTo(told.isExact());
      assertThat(connected.taken())
          .as(printed)
          .isEqualTo(told.isExact() ? List.of() : List.of(told.assumption().toString()));
      assertThat(connected.addTo(SUPPLY))
          .as("at worst")
          .isEqualTo(SUPPLY.through("coupling", told.least()));
    }
  }

  /** Nobody told its droop: it is no more certain than that of a regulator of a catalogue. */
  @Test
  void a_regulator_without_a_droop_is_known_as_well_as_one_of_a_catalogue() throws Exception {
    Connected untold = read(ITEMS.get(1));
    assertThat(untold.isExact()).isFalse();
    assertThat(untold.taken()).singleElement().asString().startsWith("droop not told");
    Connected told = read(Map.of(
        "name",
        "regulator",
        "capacity",
        "C 9 dm3/(s bar), b 0.3",
        "set",
        "6 bar(g)",
        "droop",
        "0.4 bar",
        "atFlow",
        "20 L/s ANR"));
    assertThat(told.isExact()).isTrue();
    assertThat(told.taken()).isEmpty();
  }

  /** What is exact only because something was taken says so; what the file tells whole says nothing. */
  @Test
  void an_exact_rating_tells_what_was_taken_for_it() throws Exception {
    Connected rated =
        read(Map.of("name", "coupling", "capacity", "40 scfm at 100 psig, 5 psi drop, b 0.3"));
    assertThat(rated.isExact()).isTrue();
    assertThat(rated.taken()).isEmpty();
    assertThat(rated.assumed(UnitSystem.US))
        .singleElement()
        .asString()
        .contains("air of the rating taken as 20 °C");
    assertThat(Connected.takenForGranted("now", List.of(rated, read(ITEMS.get(0))), UnitSystem.US)
            .orElseThrow())
        .startsWith("now: taken for what is not told: coupling (gauge pressures")
        .endsWith(").");
    assertThat(read(ITEMS.get(0)).assumed(UnitSystem.US)).isEmpty();
    assertThat(Connected.takenForGranted("now", List.of(read(ITEMS.get(0))), UnitSystem.US))
        .isEmpty();
  }

  /** The curve of a maker holds at one setting: at another it is a choice, and that is said. */
  @Test
  void a_curve_at_another_setting_is_told_as_a_choice() throws Exception {
    Map<String, Object> regulator = Map.of(
        "name",
        "regulator",
        "capacity",
        "C 9 dm3/(s bar), b 0.3",
        "set",
        "85 psig",
        "curve",
        "90 psig at 0 scfm; 80 psig at 40 scfm");
    assertThat(read(regulator).assumed(UnitSystem.US))
        .containsExactly(
            "its maker's curve is drawn at a setting of 90 psig; at 85 psig it is taken"
                + " to droop by as much at the same flow, which is our choice");
    Map<String, Object> alike = new HashMap<>(regulator);
    alike.put("set", "90 psig");
    assertThat(read(alike).assumed(UnitSystem.US)).isEmpty();
  }

  /** As other ranges: the longest is the worst, the shortest the best. */
  @Test
  void a_length_may_be_a_range() throws Exception {
    Map<String, Object> hose = Map.of(
        "name", "hose", "bore", "3/8 in", "length", "25 to 35 ft", "wall", "smooth rubber hose");
    Connected read = read(hose);
    assertThat(read.isExact()).isFalse();
    assertThat(read.taken()).containsExactly("told as a range");
    Map<String, Object> longest = new HashMap<>(hose);
    longest.put("length", "35 ft");
    assertThat(read.addTo(SUPPLY)).as("at worst").isEqualTo(read(longest).addTo(SUPPLY));
  }

  @Test
  void what_has_neither_a_length_nor_a_capacity_is_told_both_ways() {
    assertThatThrownBy(() -> read(Map.of("name", "coupling")))
        .isInstanceOfSatisfying(
            WrongFileException.class,
            wrong -> assertThat(wrong.complaint())
                .startsWith("is missing")
                .contains("a length such as")
                .contains("or, of any other part, its capacity, such as \"Cv 1.4\""));
  }

  @Test
  void it_tells_what_it_is_set_to_and_whether_it_is_known_exactly() throws Exception {
    assertThat(read(ITEMS.get(0)).isExact()).isTrue();
    assertThat(read(ITEMS.get(0)).set()).isEmpty();
    assertThat(read(ITEMS.get(1)).set()).contains(Range.exactly(GaugePressure.ofBar(6.0)));
    assertThat(read(ITEMS.get(2)).isExact()).isFalse();
    assertThat(read(ITEMS.get(2))).hasToString("hose");
  }

  @Test
  void what_is_wrong_is_told_with_its_field() {
    assertThatThrownBy(() -> read(Map.of("name", "hose", "bore", "3/8", "length", "25 ft")))
        .isInstanceOfSatisfying(
            WrongFileException.class, wrong -> assertThat(wrong.place()).isEqualTo("bore"));
    assertThatThrownBy(
            () -> read(Map.of("name", "x", "capacity", "C 6 dm3/(s bar), b 0.3", "colour", "red")))
        .isInstanceOfSatisfying(
            WrongFileException.class, wrong -> assertThat(wrong.place()).contains("colour"));
  }

  @Test
  void a_run_takes_a_name_once() throws Exception {
    Connected coupling = read(ITEMS.get(0));
    Run longer = coupling.addTo(SUPPLY);
    assertThatThrownBy(() -> coupling.addTo(longer))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must differ");
  }
}
