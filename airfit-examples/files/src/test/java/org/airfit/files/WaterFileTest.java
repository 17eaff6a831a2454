package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.airfit.air.AirPurity;
import org.airfit.air.PurityVerdict;
import org.airfit.air.SlopeVerdict;
import org.airfit.air.TreatmentKind;
import org.airfit.air.TreatmentStage;
import org.airfit.plant.ElementCost;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Temperature;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterFileTest {

  private static final Path KILN_ROW = Path.of("..", "treatments", "kiln-row", "paint-shop.json");
  private static final Path CHAPEL_YARD =
      Path.of("..", "treatments", "chapel-yard", "print-works.json");

  @TempDir
  Path folder;

  private WaterJob read(String text) throws IOException, WrongFileException {
    Path file = folder.resolve("water.json");
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    return Disk.water(file, new ArrayList<>());
  }

  @Test
  void the_example_says_what_its_fields_say() throws WrongFileException {
    List<Path> read = new ArrayList<>();
    WaterJob job = Disk.water(KILN_ROW, read);
    assertThat(read).containsExactly(KILN_ROW);
    assertThat(job.units()).isEqualTo(UnitSystem.US);
    assertThat(job.shift()).isEqualTo(Duration.ofHours(8));
    assertThat(job.asked()).hasValue(AirPurity.parse("[1:4:2]"));
    assertThat(job.trains())
        .extracting(WaterJob.Train::name)
        .containsExactly("as it stands", "larger dryer, fine filter");
    WaterJob.Train now = job.trains().get(0);
    List<TreatmentStage> stages = now.treatment().stages();
    assertThat(stages).hasSize(6);
    TreatmentStage dryer = stages.get(3);
    assertThat(dryer.kind()).isEqualTo(TreatmentKind.REFRIGERATED_DRYER);
    TreatmentStage.Duty duty = dryer.duty().orElseThrow();
    assertThat(duty.dewPoint()).hasValue(Temperature.parse("38 °F"));
    assertThat(duty.rating().pressure()).isEqualTo(GaugePressure.ofPsi(100.0));
    assertThat(duty.rating().byInlet()).hasSize(2);
    assertThat(duty.rating().byInlet().get(1).factor()).isEqualTo(0.82);
    assertThat(dryer.loss().orElseThrow().changeOut())
        .isEqualTo(dryer.loss().get().clean());
    TreatmentStage filter = stages.get(2);
    assertThat(filter.air()).as("as in front of it").isEqualTo(stages.get(1).air());
    assertThat(filter.isDrained()).isTrue();
    assertThat(filter.loss().orElseThrow().flow())
        .isEqualTo(filter.duty().get().rating().flow());
    assertThat(now.mains().get(0).slope().verdict()).isEqualTo(SlopeVerdict.TOO_FLAT);
    assertThat(now.mains().get(0).slope().isWithAir()).isTrue();
    assertThat(now.treatment().supply().mist().orElseThrow().kilogramsPerCubicMetre())
        .isCloseTo(3.0e-6, within(1.0e-18));
  }

  /** By hand: 200 scfm × 0.9 at 98 psig × 0.82 at 110 °F × 0.94 at 105 °F are 138.7 scfm for 205. */
  @Test
  void the_example_is_not_reached_as_it_stands_and_reached_otherwise() throws WrongFileException {
    WaterJob job = Disk.water(KILN_ROW, new ArrayList<>());
    AirPurity asked = job.asked().orElseThrow();
    assertThat(job.trains()
            .get(0)
            .treatment()
            .judge(asked, UnitSystem.US)
            .water()
            .reasons()
            .get(0))
        .contains("138.7 scfm", "205 scfm");
    assertThat(job.trains().get(0).treatment().judge(asked, UnitSystem.US).verdict())
        .isEqualTo(PurityVerdict.NOT_REACHED);
    assertThat(job.trains().get(1).treatment().judge(asked, UnitSystem.US).verdict())
        .isEqualTo(PurityVerdict.REACHED);
    assertThat(Disk.water(CHAPEL_YARD, new ArrayList<>())
            .trains()
            .get(0)
            .treatment()
            .judge(AirPurity.parse("[2:2:1]"), UnitSystem.SI)
            .verdict())
        .isEqualTo(PurityVerdict.REACHED);
  }

  /** Only what has an element to change has a cost. */
  @Test
  void elements_cost_what_the_plant_makes_good() throws Exception {
    List<ElementCost> costs =
        Disk.water(KILN_ROW, new ArrayList<>()).trains().get(1).costs();
    assertThat(costs)
        .extracting(ElementCost::what)
        .containsExactly("general filter", "fine filter");
    assertThat(costs.get(0).element()).hasValue(Money.parse("95 USD"));
    assertThat(costs.get(0).leastExtra()).isGreaterThan(Money.parse("100 USD"));
    String without = Files.readString(KILN_ROW).replaceFirst("(?s)\"plant\": \\{.*?\\},", "");
    assertThat(read(without).trains().get(1).costs()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "\"airfitWater\": 1; \"airfitWater\": 2; airfitWater; accepted: 1",
        "\"105 to 120 psig\"; \"105 to 120\"; pressure; psig",
        "\"driest\": 0.3; \"driest\": 30; intake.driest; relative humidity must be in (0, 1], was"
            + " 30",
        "\"dampest\": 0.7; \"dampest\": 75; intake.dampest; relative humidity must be in (0, 1]",
        "\"120 to 205 scfm\"; \"0 to 205 scfm\"; air; the least flow through the train must be"
            + " above 0",
        "\"170 to 215 °F\"; \"170 to 215\"; discharge; °F",
        "\"air\": \"150 scfm\"; \"air\": \"206 scfm\"; plant.air; must be at most the most air of"
            + " the train",
        "\"delivery\": \"210 scfm\"; \"delivery\": \"149 scfm\"; plant.air; at most the delivery",
        "\"dampest\": 0.7; \"damp\": 0.7; intake.dampest; is missing; damp",
        "\"3 mg/m3\"; \"3 ppm\"; oil.mist; mg/m³",
        "\"8 h\"; \"8 hrs of work\"; shift; is no time",
        "\"[1:4:2]\"; \"[1:4:9]\"; asked; class of oil must be 0 to 4",
        "\"power\": \"42 kW\"; \"power\": \"4 kW\"; plant; at least the work without losses",
        "\"compressionStages\": 1; \"compressionStages\": 0; plant.compressionStages; must be 1 or"
            + " 2, was 0",
        "\"compressionStages\": 1; \"compressionStages\": 9; plant.compressionStages; must be 1 or"
            + " 2, was 9",
        "\"[1:4:2]\"; \"[1:4:2\"; asked; three classes",
        "\"dewPoint\": \"38 °F\"; \"dewPoint\": \"31 °F\"; trains[1].stages[4].dewPoint; was \"31"
            + " °F\"",
        "\"hours\": 4200; \"hours\": 9000; plant.hours; [0, 8784]",
        "\"cooler\"; \"colder\"; trains[1].stages[1].kind; cooler",
        "\"air\": \"60 to 115 °F\", \"drain\"; \"drain\"; trains[1].stages[1].air; is missing",
        "\"inlet\": \"120 °F\"; \"in\": \"120 °F\"; trains[1].stages[3].rated.inlet; is missing",
        "\"particles\": \"2\"; \"particles\": \"9\"; trains[1].stages[3].particles; accepted: 1, 2",
        "\"leaves\": \"0.5 mg/m3\"; \"leaves\": \"50 mg/m3\";"
            + " trains[1].stages[3].oilMist.testedWith; \"50 mg/m3\"",
        "\"changeOut\": \"7 psi\"; \"changeOut\": \"1 psi\"; trains[1].stages[3].loss.changeOut;"
            + " clean element, \"1.5 psi\"",
        "\"95.00 USD\"; \"95.00 EUR\"; trains[1].stages[3].element; is in EUR, and electricity in"
            + " USD",
        "\"95.00 USD\"; \"-95.00 USD\"; trains[1].stages[3].element; must be at least 0",
        "\"factor\": 0.82; \"factor\": 1.82; trains[1].stages[4].rated.byInlet[2]; was 1.82 at"
            + " \"110 °F\" behind 1 at \"100 °F\"",
        "\"factor\": 0.9}; \"factor\": 1.9}; trains[1].stages[4].rated.byPressure[2]; behind 1.9"
            + " at \"80 psig\"",
        "\"factor\": 0.94; \"factor\": 0; trains[1].stages[4].rated.byRoom[2]; (0, 10]",
        "\"dewPoint\": \"38 °F\"; \"dewPoint\": \"38\"; trains[1].stages[4].dewPoint; °F",
        "\"slope\": 0.003; \"slope\": 3; trains[1].stages[5].main; [0, 0.2]",
        "\"with the air\"; \"downhill\"; trains[1].stages[5].main.waterRuns; against the air",
        "\"larger dryer, fine filter\"; \"as it stands\"; trains[2].name; stands twice",
        "\"name\": \"paint shop\"; \"name\": \"dryer\"; trains[1].stages[6].name; stands twice",
        "\"customer\"; \"custom\": 1, \"customer\"; custom; is no field here",
        "\"room\"; \"medium\": \"oxygen\", \"room\"; medium; oxygen"
      })
  void a_wrong_field_is_told_by_its_name(String from, String to, String place, String accepted)
      throws IOException {
    String file = Files.readString(KILN_ROW);
    assertThat(file).contains(from);
    String wrong = file.replaceFirst(Pattern.quote(from), to);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(wrong))
        .withMessageContaining(place)
        .withMessageContaining(accepted)
        .satisfies(
            thrown -> assertThat(String.valueOf(thrown.getMessage()).lines()).hasSize(1));
  }

  @ParameterizedTest
  @CsvSource({
    "temperature, 25 to 95 °F, -40 to 35 °C, -40.1 to 35 °C, '[-40, 100] °C'",
    "temperature, 25 to 95 °F, -4 to 100 °C, -4 to 100.1 °C, '[-40, 100] °C'",
    "air, 60 to 115 °F, -100 to 46 °C, -100.1 to 46 °C, '[-100, 100] °C'",
    "air, 60 to 115 °F, 16 to 100 °C, 16 to 100.1 °C, '[-100, 100] °C'"
  })
  void air_is_as_cold_and_as_hot_as_is_reckoned_with_and_no_more(
      String field, String told, String at, String beyond, String within) throws Exception {
    String file = Files.readString(KILN_ROW);
    String cell = "\"" + field + "\": \"";
    assertThat(file).contains(cell + told);
    assertThat(read(file.replaceFirst(cell + told, cell + at)).trains()).hasSize(2);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(file.replaceFirst(cell + told, cell + beyond)))
        .withMessageContaining(field + ": was \"" + beyond + "\"")
        .withMessageContaining("must be in " + within);
  }

  @Test
  void a_duty_without_its_rating_and_an_element_without_its_loss_are_refused() throws IOException {
    String file = Files.readString(KILN_ROW);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(file.replaceFirst("(?s)\"rated\": \\{[^{]*?\\},", "")))
        .withMessageContaining("trains[1].stages[3].rated")
        .withMessageContaining("is missing");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(file.replaceFirst("\"loss\": \\{[^}]*\\}, ", "")))
        .withMessageContaining("trains[1].stages[3].element")
        .withMessageContaining("without loss");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(file.replaceFirst("(?s)\"trains\": \\[.*\\]", "\"trains\": []")))
        .withMessageContaining("1 to 10 trains, held 0");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(
            () -> read(file.replaceFirst("(?s)\"stages\": \\[.*?\\n {6}\\]", "\"stages\": []")))
        .withMessageContaining("trains[1].stages: must hold 1 to 20 stages, held 0");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(file.replace(
            "\"kind\": \"pipe\", \"air\": \"15", "\"kind\": \"receiver\", \"air\": \"15")))
        .withMessageContaining("trains[1].stages[5].main")
        .withMessageContaining("belongs to a pipe alone");
  }
}
