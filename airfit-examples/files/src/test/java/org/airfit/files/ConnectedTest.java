package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.airfit.air.AirState;
import org.airfit.plug.DemoProfiles;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.airfit.select.Catalogue;
import org.junit.jupiter.api.Test;

/** One item of what is connected, read by itself, is what a job with that item makes of it. */
class ConnectedTest {

  private static final ShopCatalogue NONE =
      new ShopCatalogue("none", DemoProfiles.birds(), Catalogue.of(List.of()), List.of());

  private static final List<Map<String, Object>> ITEMS = List.of(
      Map.of("name", "coupling", "capacity", "C 6 dm3/(s bar), b 0.3"),
      Map.of("name", "regulator", "capacity", "C 9 dm3/(s bar), b 0.3", "set", "6 bar(g)"),
      Map.of("name", "hose", "bore", "3/8 in", "length", "25 ft", "wall", "rubber hose"));

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
    assertThat(run).isEqualTo(read.now().orElseThrow());
    assertThat(run.names()).containsExactly("coupling", "regulator", "hose");
  }

  @Test
  void it_tells_what_it_is_set_to_and_whether_it_is_known_exactly() throws Exception {
    assertThat(read(ITEMS.get(0)).isExact()).isTrue();
    assertThat(read(ITEMS.get(0)).set()).isEmpty();
    assertThat(read(ITEMS.get(1)).set()).contains(GaugePressure.ofBar(6.0));
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
    Run run = Run.from(
        AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0)),
        AbsolutePressure.STANDARD_ATMOSPHERE);
    Connected coupling = read(ITEMS.get(0));
    Run longer = coupling.addTo(run);
    assertThatThrownBy(() -> coupling.addTo(longer))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must differ");
  }
}
