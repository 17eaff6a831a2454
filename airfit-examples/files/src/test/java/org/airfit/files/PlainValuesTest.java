package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.line.Conduit;
import org.airfit.quantity.GaugePressure;
import org.junit.jupiter.api.Test;

/** Files given as maps and lists, as a web page or another library builds them. */
class PlainValuesTest {

  private static final Map<String, Object> PROFILE = Map.of(
      "id", "wren",
      "name", "Wren",
      "from", "invented",
      "source", "made up",
      "dimensions", Map.of("tip diameter", Map.of("nominal", "11.9 mm", "deviation", "0.03 mm")));

  private static final Map<String, Object> SOCKET = Map.of(
      "kind", "socket",
      "id", "S-1",
      "name", "Socket",
      "takes", List.of("wren"),
      "end", "1/2 NPT male",
      "capacity", Map.of("conductance", "8 dm3/(s bar)", "criticalPressureRatio", 0.3));

  private static final Map<String, Object> CATALOGUE =
      Map.of("catalogue", "Shop", "profiles", List.of(PROFILE), "parts", List.of(SOCKET));

  private static Map<String, Object> job(Object fittings) {
    Map<String, Object> job = new LinkedHashMap<>();
    job.put("airfitJob", 2);
    job.put("job", "A job");
    job.put("customer", "K.");
    job.put("catalogue", "shop.json");
    job.put("atHand", Map.of("where", "a box"));
    job.put(
        "supply", Map.of("pressure", "7 bar(g)", "temperature", "20 °C", "atmosphere", "1 bar(a)"));
    job.put(
        "line",
        List.of(
            Map.of(
                "kind", "pipe",
                "bore", "21 mm",
                "length", "10 m",
                "roughness", "0.045 mm",
                "fittings", fittings),
            Map.of("kind", "outlet", "end", "1/2 NPT female"),
            Map.of("kind", "coupling"),
            Map.of("kind", "hose", "reach", "5 m")));
    job.put(
        "tool",
        Map.of(
            "name", "grinder",
            "air", "10 L/s ANR",
            "pressure", "6 bar(g)",
            "inlet", "1/4 NPT female"));
    job.put("now", null);
    return job;
  }

  private static Job read(Map<String, Object> job) throws WrongFileException {
    return JobFile.read(new Document("job.json", job, path -> {
      assertThat(path).isEqualTo("shop.json");
      return Document.of(path, CATALOGUE);
    }));
  }

  @Test
  void a_job_and_its_catalogue_are_read_from_maps_and_lists() throws WrongFileException {
    Job job = read(job(2));
    assertThat(job.title()).isEqualTo("A job");
    assertThat(job.catalogue().parts().part("S-1")).isPresent();
    assertThat(job.requirement().least()).isEqualTo(GaugePressure.ofBar(6.0));
    assertThat(job.now()).as("null is a field that is missing").isEmpty();
  }

  /** A web page's JSON has one type of number. */
  @Test
  void a_number_may_be_of_any_type() throws WrongFileException {
    Map<String, Object> pipe =
        new LinkedHashMap<>(Map.of("bore", "21 mm", "length", "10 m", "roughness", "0.045 mm"));
    for (Number fittings : List.<Number>of(2, 2L, 2.0, 2.0f, new BigDecimal("2"))) {
      pipe.put("fittings", fittings);
      Conduit read = FlowFields.conduit(Field.of(Document.of("pipe.json", pipe)));
      assertThat(read.fittingLoss()).isEqualTo(2.0);
    }
    assertThat(Notation.JSON.wholeNumber(5.0)).isEqualTo(5);
    for (Object wrong : new Object[] {5.5, Double.NaN, 1.0e10, "5", true}) {
      assertThatExceptionOfType(IllegalArgumentException.class)
          .isThrownBy(() -> Notation.JSON.wholeNumber(wrong))
          .withMessageContaining("a whole number without quotation marks is wanted");
    }
  }

  @Test
  void a_wrong_value_is_told_by_its_place() {
    Map<String, Object> job = job("two");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(job))
        .withMessageStartingWith(
            "job.json: line[1].fittings: \"two\": \"two\" is no fitting known here; accepted:"
                + " the sum of K as a number, or a list such as \"4 elbows, 1 tee, 1 ball valve\" of elbow,");
    job.put("line", 5.0);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(job))
        .withMessage(
            "job.json: line: was 5; a list in square brackets is wanted: "
                + "a list of what stands from the supply to the tool, such as {\"kind\": \"outlet\", …}");
  }

  @Test
  void a_file_that_stands_alone_may_name_no_other() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> JobFile.read(Document.of("job.json", job(2))))
        .withMessage("job.json: names the file \"shop.json\", but no other file was given");
  }

  @Test
  void a_document_of_the_wrong_kind_is_refused() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> JobFile.read(Document.of("job.json", List.of())))
        .withMessageContaining("job.json: holds a list; a JSON object is wanted");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> NetworkFile.read(Document.of("net.csv", Map.of())))
        .withMessageContaining(
            "net.csv: holds an object; a table is wanted, with the heading record");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> NetworkFile.read(Document.of("net.csv", List.of("record"))))
        .withMessage("net.csv: row 1: was the text \"record\"; a list of texts is wanted");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(
            () -> NetworkFile.read(Document.of("net.csv", List.of(List.of("record"), List.of(7)))))
        .withMessage("net.csv: row 2: holds 7; texts are wanted");
  }

  /** The map that another JSON library would write is the one that this one writes. */
  @Test
  void the_plain_values_of_a_set_are_those_of_its_text() throws IOException, WrongFileException {
    var set = Disk.referenceSet(Path.of("..", "sets", "workshop.csv"));
    Map<String, Object> plain = ReferenceSetFile.toObject(set);
    assertThat(Json.read("set.json", Json.write(plain))).isEqualTo(plain);
    List<List<String>> rows = ReferenceSetFile.toRows(set);
    assertThat(Csv.read("set.csv", Csv.write(rows))).isEqualTo(rows);
    assertThat(Files.readString(Path.of("..", "sets", "workshop.csv"))).isEqualTo(Csv.write(rows));
    assertThat(ReferenceSetFile.toRows(ReferenceSetFile.read(Document.of("set", plain))))
        .isEqualTo(rows);
  }

  @Test
  void changing_the_lists_given_to_a_network_does_not_change_it() throws WrongFileException {
    NetworkJob read = Disk.network(Path.of("..", "networks", "ferry-lane-ring.csv"));
    List<NetworkJob.Drop> drops = new ArrayList<>(read.drops());
    NetworkJob job = new NetworkJob(
        read.title(),
        read.customer(),
        read.atmosphere(),
        read.supply(),
        read.highest(),
        read.network(),
        read.branches(),
        drops,
        read.leaks(),
        read.supplyNames(),
        read.units(),
        read.asFiled());
    drops.clear();
    assertThat(job.drops()).isEqualTo(read.drops()).hasSize(6);
  }
}
