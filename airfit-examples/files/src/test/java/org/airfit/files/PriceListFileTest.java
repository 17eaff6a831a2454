package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Set;
import org.airfit.measure.Instrument;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.ValveCoefficient;
import org.airfit.select.FaultKind;
import org.airfit.select.JobMix;
import org.airfit.select.ListFault;
import org.airfit.select.ListedPart;
import org.airfit.select.PriceList;
import org.airfit.select.PriceListCheck;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriceListFileTest {

  private static final Path CANAL_ROW = Path.of("..", "shops", "canal-row", "check.json");

  /** A list of two halves and a hose without a fault. */
  private static final String LIST = """
      {
        "catalogue": "small", "currency": "EUR", "profileSet": "profiles.csv",
        "parts": [
          {
            "kind": "socket", "id": "S", "name": "socket", "price": "9.00", "takes": ["dunlin"], "end": "G 1/4 male",
            "capacity": "C 4 dm3/(s bar), b 0.3", "rated": "16 bar(g)",
            "printed": {"coefficient": "1.0 Kv", "bore": "6 mm", "fullFlow": "30 L/s ANR", "at": "7 bar(g)"}
          },
          {
            "kind": "plug", "id": "P", "name": "plug", "price": "3.00", "profile": "dunlin", "end": "G 1/4 male",
            "rated": "16 bar(g)"
          },
          {
            "kind": "hose", "id": "H", "name": "hose", "price": "20.00", "hose": "3/8 in", "bore": "9.5 mm",
            "length": "10 m", "wall": "smooth rubber hose", "end": "G 1/4 female", "rated": "16 bar(g)"
          }
        ]
      }
      """;

  private static final String CHECK = """
      {
        "airfitPriceList": 1, "title": "small", "customer": "invented", "list": "price-list.json",
        "caliper": "vernier caliper 0.02 mm", "risk": 0.02, "soldTogether": [["S", "P"]], "usualEnds": ["G 1/4 female"],
        "mix": {
          "seed": 3, "jobs": 5, "atmosphere": "1.013 bar(a)", "temperature": "20 °C",
          "tools": [{"name": "drill", "air": "6 to 7 L/s ANR", "needs": "6 bar(g)", "rated": "8 bar(g)",
            "inlet": "G 1/4 female"}],
          "places": [{"name": "bench", "weight": 2, "pressure": "7 bar(g)", "outlet": "G 1/4 female",
            "reach": "5 to 9 m", "environment": "outdoors"}]
        }
      }
      """;

  @TempDir
  Path folder;

  private PriceListJob read(String check, String list) throws IOException, WrongFileException {
    Files.write(
        folder.resolve("profiles.csv"),
        Files.readAllBytes(CANAL_ROW.resolveSibling("profiles.csv")));
    Files.write(folder.resolve("price-list.json"), list.getBytes(StandardCharsets.UTF_8));
    Path file = folder.resolve("check.json");
    Files.write(file, check.getBytes(StandardCharsets.UTF_8));
    return Disk.priceList(file, new ArrayList<>());
  }

  private static String replaced(String text, String from, String to) {
    assertThat(text).contains(from);
    return text.replace(from, to);
  }

  @Test
  void the_file_says_what_its_fields_say() throws IOException, WrongFileException {
    PriceListJob job = read(CHECK, LIST);
    assertThat(job.unread()).isEmpty();
    assertThat(job.remarks()).isEmpty();
    assertThat(job.units()).isEqualTo(UnitSystem.SI);
    PriceList list = job.list();
    assertThat(list.caliper()).isEqualTo(Instrument.VERNIER_CALIPER_0_02);
    assertThat(list.risk()).isEqualTo(0.02);
    assertThat(list.soldTogether()).containsExactly(Set.of("S", "P"));
    assertThat(list.usualEnds()).hasSize(1);
    ListedPart socket = list.articles().get(0);
    assertThat(socket.coefficient()).hasValue(ValveCoefficient.ofKv(1.0));
    assertThat(socket.bore()).hasValue(Length.ofMillimetres(6.0));
    assertThat(socket.fullFlow().orElseThrow().inlet().pressure().bar()).isEqualTo(8.01325);
    assertThat(list.articles().get(1).fullFlow()).isEmpty();
    assertThat(job.catalogue().parts()).hasSize(3);
    JobMix mix = job.mix().orElseThrow();
    assertThat(mix.seed()).isEqualTo(3L);
    assertThat(mix.jobs()).isEqualTo(5);
    assertThat(mix.tools().get(0).weight()).isEqualTo(1.0);
    assertThat(mix.places().get(0).weight()).isEqualTo(2.0);
    assertThat(mix.places().get(0).pressure().most()).isEqualTo(GaugePressure.ofBar(7.0));
    assertThat(mix.hoseLengths()).isEqualTo(JobMix.METRES);
    assertThat(PriceListCheck.of(list).faults()).isEmpty();
  }

  @Test
  void in_us_units_hoses_come_in_feet() throws IOException, WrongFileException {
    PriceListJob job = read(replaced(CHECK, "1.013 bar(a)", "14.7 psia"), LIST);
    assertThat(job.units()).isEqualTo(UnitSystem.US);
    assertThat(job.mix().orElseThrow().hoseLengths()).isEqualTo(JobMix.FEET);
  }

  /** Every fault that was planted, and no other. */
  @Test
  void the_example_has_the_faults_that_were_planted() throws WrongFileException {
    PriceListJob job = Disk.priceList(CANAL_ROW, new ArrayList<>());
    assertThat(job.unread())
        .extracting(each -> each.id() + " " + each.place())
        .containsExactly(
            "S-R38 parts[7].end",
            "P-R516 parts[17].end",
            "H-12-X parts[25].length",
            "H-516-15 parts[26].rated",
            "H-516-15 parts[26].wall");
    assertThat(PriceListCheck.of(job.list()).faults())
        .extracting(fault ->
            fault.kind() + ": " + fault.articles().get(0) + (fault.isImpossible() ? " !" : ""))
        .containsExactly(
            FaultKind.RATING_BELOW + ": P-K14",
            FaultKind.C_AGAINST_CV + ": S-D38 !",
            FaultKind.ABOVE_CHOKING + ": S-D38F !",
            FaultKind.ABOVE_CHOKING + ": S-K38 !",
            FaultKind.PROFILES_TOO_ALIKE + ": dunlin",
            FaultKind.PRICE_OUT_OF_LINE + ": P-R14",
            FaultKind.PRICE_NOT_ABOVE_COST + ": H-12-25",
            FaultKind.TWO_PRICES + ": P-D14",
            FaultKind.TWO_PRICES + ": P-D38",
            FaultKind.AIR_FIGURE_OPEN + ": S-K14",
            FaultKind.RATING_NOT_TOLD + ": H-38-25Y",
            FaultKind.PRICE_NOT_TOLD + ": P-R38",
            FaultKind.ORPHAN_ADAPTER + ": A-3P");
  }

  @Test
  void every_fault_of_an_article_is_told_and_the_others_are_read()
      throws IOException, WrongFileException {
    String list =
        replaced(LIST, "\"end\": \"G 1/4 female\", \"rated\"", "\"ends\": \"G 1/4\", \"rated\"");
    list = replaced(list, "\"length\": \"10 m\"", "\"length\": \"10\"");
    list = replaced(list, "\"price\": \"20.00\"", "\"price\": \"20,00\"");
    list = replaced(
        list,
        "\"takes\": [\"dunlin\"], \"end\": \"G 1/4 male\"",
        "\"takes\": [\"dunlyn\"], \"end\": \"G 7/16 male\"");
    list = replaced(list, "\"bore\": \"6 mm\"", "\"bore\": \"6\"");
    String check = replaced(CHECK, "\"soldTogether\": [[\"S\", \"P\"]], ", "");
    PriceListJob job = read(check, list);
    assertThat(job.list().articles()).extracting(ListedPart::id).containsExactly("P");
    assertThat(job.unread())
        .extracting(each -> each.id() + " " + each.place())
        .containsExactlyInAnyOrder(
            "S parts[1].takes[1]",
            "S parts[1].printed.bore",
            "S parts[1].end",
            "H parts[3].price",
            "H parts[3].length",
            "H parts[3].end",
            "H parts[3].ends");
    assertThat(job.unread())
        .anySatisfy(
            each -> assertThat(each.complaint()).contains("there is no such nominal thread size"));
  }

  /** An article of a set that cannot be read is told, and the rest of the list is checked. */
  @Test
  void a_set_is_checked_without_the_article_that_cannot_be_read()
      throws IOException, WrongFileException {
    String list = replaced(LIST, "\"length\": \"10 m\"", "\"length\": \"10\"");
    PriceListJob job =
        read(replaced(CHECK, "[[\"S\", \"P\"]]", "[[\"S\", \"P\", \"H\"], [\"H\", \"P\"]]"), list);
    assertThat(job.unread()).extracting(each -> each.id()).containsExactly("H");
    assertThat(job.list().soldTogether()).containsExactly(Set.of("S", "P"));
    assertThat(job.remarks())
        .containsExactly(
            "soldTogether[1][3]: \"H\" could not be read, so that its set is checked without it",
            "soldTogether[2][1]: \"H\" could not be read, so that its set is checked without it");
  }

  @Test
  void a_kind_that_is_misspelt_is_told_once() throws IOException, WrongFileException {
    PriceListJob job = read(
        replaced(CHECK, "\"soldTogether\": [[\"S\", \"P\"]], ", ""),
        replaced(LIST, "\"kind\": \"hose\"", "\"kind\": \"hoze\""));
    assertThat(job.unread()).singleElement().satisfies(each -> {
      assertThat(each.place()).isEqualTo("parts[3].kind");
      assertThat(each.complaint()).contains("was \"hoze\"");
    });
  }

  @Test
  void an_article_twice_is_a_fault_and_not_a_refusal() throws IOException, WrongFileException {
    PriceListJob job = read(CHECK, replaced(LIST, "\"id\": \"H\"", "\"id\": \"P\""));
    assertThat(job.unread()).isEmpty();
    assertThat(job.catalogue().parts()).hasSize(2);
    assertThat(PriceListCheck.of(job.list()).faults())
        .extracting(ListFault::kind)
        .containsExactly(FaultKind.ARTICLE_TWICE);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "\"airfitPriceList\": 1; \"airfitPriceList\": 2; airfitPriceList; accepted: 1",
        "\"vernier caliper 0.02 mm\"; \"ruler\"; caliper; vernier caliper 0.05 mm",
        "\"risk\": 0.02; \"risk\": 0.7; check.json: risk: ; must be in (0, 0.5), was 0.7",
        "[\"S\", \"P\"]; [\"S\", \"Q\"]; soldTogether[1][2]; was \"Q\", which is no article of the"
            + " list",
        "[\"S\", \"P\"]; [\"S\", \"S\"]; soldTogether[1]; names one part only",
        "[\"G 1/4 female\"]; [\"G 1/5 female\"]; usualEnds[1]; G 1/5",
        "\"jobs\": 5; \"jobs\": 500; mix; [1, 400], were 500",
        "\"needs\": \"6 bar(g)\"; \"needs\": \"6 bar\"; mix.tools[1].needs; bar(g)",
        "\"rated\": \"8 bar(g)\"; \"rated\": \"5 bar(g)\"; mix.tools[1]; at least what it needs",
        "\"weight\": 2; \"weight\": 0; mix.places[1]; weight of place",
        "\"outdoors\"; \"outdors\"; mix.places[1].environment; outdoors",
        "\"seed\": 3,; ''; mix.seed; is missing",
        "\"customer\"; \"custom\": 1, \"customer\"; custom; is no field here",
        "\"customer\"; \"medium\": \"oxygen\", \"customer\"; medium; oxygen"
      })
  void what_is_wrong_in_the_check_is_refused_with_its_place(
      String from, String to, String place, String complaint) {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(replaced(CHECK, from, to), LIST))
        .withMessageContaining(place)
        .withMessageContaining(complaint);
  }

  @Test
  void a_list_that_is_none_is_refused() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(CHECK, "{\"catalogue\": \"x\", \"profileSet\": \"profiles.csv\"}"))
        .withMessageContaining("parts: is missing");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(CHECK, replaced(LIST, "\"currency\"", "\"curency\"")))
        .withMessageContaining("curency");
  }

  /** A catalogue that has printed figures is still one for jobs, and they are read as carefully. */
  @Test
  void printed_figures_are_read_for_jobs_too() throws IOException, WrongFileException {
    ReferenceSet set = Disk.referenceSet(CANAL_ROW.resolveSibling("profiles.csv"));
    String list = replaced(LIST, "\"profileSet\": \"profiles.csv\",", "");
    Object good = Json.read("price-list.json", list);
    assertThat(CatalogueFile.read(Document.of("price-list.json", good), set)
            .parts()
            .parts())
        .hasSize(3);
    Object wrong =
        Json.read("price-list.json", replaced(list, "\"at\": \"7 bar(g)\"", "\"at\": \"7 bar\""));
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> CatalogueFile.read(Document.of("price-list.json", wrong), set))
        .withMessageContaining("parts[1].printed.at");
    Object alone =
        Json.read("price-list.json", replaced(list, "\"fullFlow\": \"30 L/s ANR\", ", ""));
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> CatalogueFile.read(Document.of("price-list.json", alone), set))
        .withMessageContaining("is told without fullFlow");
  }
}
