package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.airfit.network.DayPrice;
import org.airfit.network.DemandTimes;
import org.airfit.network.PlantDay;
import org.airfit.plant.TimedCompressor;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Power;
import org.airfit.quantity.Range;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DayFileTest {

  private static final String DAY = """
      {
        "airfitDay": 1, "title": "Shed", "customer": "K.", "atmosphere": "0.8 bar(a)", "temperature": "20 °C",
        "begins": "22:00", "lasts": "10 h",
        "receivers": [
          {"name": "wet", "volume": "300 L", "start": "7 bar(g)"},
          {"name": "dry", "volume": "0.5 m3", "start": "6.9 bar(g)",
            "join": [{"name": "dryer", "conductance": "20 dm3/(s bar)", "criticalPressureRatio": 0.3}]}
        ],
        "compressors": [
          {"name": "c", "delivers": "1000 L/min", "countedAt": "inlet", "cutIn": "6.5 bar(g)", "cutOut": "7.5 bar(g)",
            "startDelay": "10 s", "loadDelay": "0 s", "runOn": "never", "blowDown": "40 s",
            "loadedPower": "8 kW", "ratedAt": "7 bar(g)"}
        ],
        "regulator": {"set": "6 bar(g)", "conductance": "40 dm3/(s bar)", "criticalPressureRatio": 0.3},
        "uses": [
          {"name": "press", "air": "300 L/min ANR", "needs": "5 bar(g)", "follows": false,
            "times": [{"from": "23:00", "to": "01:30", "load": 0.5}]},
          {"name": "blow", "air": "200 L/min ANR", "needs": "4 bar(g)", "follows": true,
            "drop": [{"name": "hose", "bore": "9.5 mm", "length": "8 m", "roughness": "0.02 mm"}],
            "repeated": {"from": "00:00", "to": "02:00", "lasting": "20 s", "every": "5 min"}},
          {"name": "line", "needs": "5 bar(g)",
            "recording": {"file": "line.csv", "averagedOver": "5 min", "most": "600 L/min ANR"}},
          {"name": "leaks", "air": "60 L/min ANR", "leaksAt": "7 bar(g)", "always": true}
        ]
      }
      """;

  private static final String TABLE = """
      time,flow
      23:00,300 L/min ANR
      23:05,150 L/min ANR
      """;

  private static DayJob read(String day, String table) throws WrongFileException {
    return DayFile.read(new Document("day.json", Json.read("day.json", day), path -> {
      if (!path.equals("line.csv")) {
        throw new WrongFileException("day.json", "", "names the file \"" + path + "\"");
      }
      return Document.of(path, Csv.read(path, table));
    }));
  }

  @Test
  void a_day_is_read_with_its_recording() throws WrongFileException {
    DayJob job = read(DAY, TABLE);
    PlantDay day = job.day();
    assertThat(job.units()).isEqualTo(UnitSystem.SI);
    assertThat(job.begins()).isEqualTo(Duration.ofHours(22));
    assertThat(day.length()).isEqualTo(Duration.ofHours(10));
    assertThat(day.receivers()).hasSize(2);
    assertThat(day.receivers().get(1).join().orElseThrow().names()).containsExactly("dryer");
    assertThat(day.regulator()).isPresent();
    assertThat(day.uses().get(0).when().spans())
        .containsExactly(new DemandTimes.Span(Duration.ofHours(1), Duration.ofMinutes(210), 0.5));
    assertThat(day.uses().get(1).when().spans()).hasSize(24);
    assertThat(day.uses().get(1).tool().ratedInlet().orElseThrow().bar())
        .isCloseTo(4.8, within(1.0e-9)); // 4 bar above an atmosphere of 0.8 bar
    assertThat(day.uses().get(2).when().averagedOver()).contains(Duration.ofMinutes(5));
    assertThat(day.uses().get(2).when().spans())
        .extracting(DemandTimes.Span::load)
        .containsExactly(0.5, 0.25);
    assertThat(day.uses().get(3).need()).isEmpty();
    assertThat(job.remarks())
        .anyMatch(remark -> remark.contains("What c takes idling is not told: 35 %"))
        .anyMatch(remark -> remark.contains("droop"));
  }

  /** The loaded power is 8 kW: 15 to 60 % of it are 1.2 to 4.8 kW. */
  @Test
  void a_price_goes_with_what_is_not_known_of_idling() throws WrongFileException {
    assertThat(read(DAY, TABLE).price()).isEmpty();
    String priced = DAY.replace(
        "\"lasts\": \"10 h\",",
        "\"lasts\": \"10 h\", \"electricity\": \"0.2 EUR\", \"timesInYear\": 230,");
    DayPrice price = read(priced, TABLE).price().orElseThrow();
    assertThat(price.perKilowattHour()).isEqualTo(Money.parse("0.2 EUR"));
    assertThat(price.timesInYear()).isEqualTo(230);
    assertThat(price.idlePowers())
        .containsExactly(
            new DayPrice.IdlePower("c", new Range<>(Power.ofWatts(1200.0), Power.ofWatts(4800.0))));
    DayJob told =
        read(priced.replace("\"ratedAt\"", "\"idlePower\": \"2 to 3 kW\", \"ratedAt\""), TABLE);
    assertThat(told.price().orElseThrow().idlePowers())
        .containsExactly(new DayPrice.IdlePower(
            "c", new Range<>(Power.ofKilowatts(2.0), Power.ofKilowatts(3.0))));
    assertThat(told.day().compressors().get(0).idlePower()).isEqualTo(Power.ofKilowatts(2.5));
    assertThat(told.remarks())
        .anyMatch(remark -> remark.contains("What c takes idling is told as 2 to 3 kW"));
    DayJob exact =
        read(priced.replace("\"ratedAt\"", "\"idlePower\": \"2 kW\", \"ratedAt\""), TABLE);
    assertThat(exact.price().orElseThrow().idlePowers()).isEmpty();
    assertThat(exact.remarks()).noneMatch(remark -> remark.contains("idling"));
  }

  /** A maker's 1000 L/min at its inlet are fewer molecules at 0.8 bar: ρ = 0.8e5/(287.05287 × 293.15). */
  @Test
  void free_air_at_the_inlet_is_that_of_the_site() throws WrongFileException {
    TimedCompressor machine = read(DAY, TABLE).day().compressors().get(0);
    double site = 0.8e5 / (287.05287 * 293.15) / 60.0;
    assertThat(machine.delivery().massFlow().kilogramsPerSecond()).isCloseTo(site, within(1.0e-7));
    TimedCompressor standard = read(
            DAY.replace("\"1000 L/min\", \"countedAt\": \"inlet\"", "\"1000 L/min ANR\""), TABLE)
        .day()
        .compressors()
        .get(0);
    assertThat(standard.delivery().massFlow().kilogramsPerSecond()).isGreaterThan(1.2 * site);
  }

  @Test
  void a_flow_of_several_meanings_is_taken_at_its_worst_and_told() throws WrongFileException {
    DayJob job = read(DAY.replace("\"1000 L/min\", \"countedAt\": \"inlet\"", "\"35 cfm\""), TABLE);
    assertThat(job.remarks()).anyMatch(remark -> remark.contains("\"35 cfm\""));
    double least = 35.0 * 0.0283168466 / 60.0 * 0.8e5 / (287.05287 * 293.15);
    assertThat(job.day().compressors().get(0).delivery().massFlow().kilogramsPerSecond())
        .isCloseTo(least, within(0.01 * least));
  }

  @Test
  void a_shared_band_takes_the_place_of_the_bands() throws WrongFileException {
    String shared = DAY.replace("\"cutIn\": \"6.5 bar(g)\", \"cutOut\": \"7.5 bar(g)\",", "")
        .replace(
            "\"regulator\"",
            "\"sharedBand\": {\"cutIn\": \"6 bar(g)\", \"cutOut\": \"7 bar(g)\", \"pause\": \"15 s\"}, \"regulator\"");
    PlantDay day = read(shared, TABLE).day();
    assertThat(day.sharedBand().orElseThrow().pause()).isEqualTo(Duration.ofSeconds(15));
    assertThat(day.lowestCutIn()).contains(GaugePressure.ofBar(6.0));
  }

  /** Each line names file, field, value and what to type. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"airfitDay\": 1|\"airfitDay\": 2|airfitDay|must be 1, was 2",
        "\"startDelay\": \"10 s\", ||compressors[1].startDelay|is missing",
        "\"lasts\"|\"electricity\": \"0.2 EUR\", \"lasts\"|timesInYear|is missing",
        "\"lasts\"|\"timesInYear\": 9, \"lasts\"|timesInYear|no price under electricity",
        "\"lasts\"|\"electricity\": \"-1 EUR\", \"timesInYear\": 9, \"lasts\"|electricity|must be at least 0",
        "\"lasts\"|\"electricity\": \"1 EUR\", \"timesInYear\": 0, \"lasts\"|timesInYear|must be in [1, 8784], was 0",
        "\"lasts\"|\"electricity\": \"1 EUR\", \"timesInYear\": 879, \"lasts\"|timesInYear|must be at most 878",
        "\"ratedAt\"|\"idlePower\": \"7 to 9 kW\", \"ratedAt\"|compressors[1].idlePower|at most the loaded power",
        "\"10 s\"|\"2 h\"|compressors[1]|start delay of c must be in [0, 3600] s, was 7200 s",
        "\"6.5 bar(g)\"|\"7.6 bar(g)\"|compressors[1]|below cut-out",
        "\"countedAt\": \"inlet\"|\"countedAt\": \"outlet\"|countedAt|accepted: inlet",
        "\"23:00\", \"to\"|\"25:00\", \"to\"|uses[1].times[1].from|[00:00, 24:00], was \"25:00\"",
        "\"23:00\", \"to\"|\"11 pm\", \"to\"|uses[1].times[1].from|no clock time",
        "\"follows\": false,||uses[1].follows|is missing",
        "\"volume\": \"300 L\"|\"volume\": \"300 psi\"|receivers[1].volume|300 psi",
        "\"600 L/min ANR\"|\"200 L/min ANR\"|column flow|above recording.most",
        "\"line.csv\"|\"lines.csv\"|lines.csv|names the file",
        "\"lasts\"|\"last\"|last|is no field here",
        "\"customer\": \"K.\"|\"customer\": \"K.\", \"medium\": \"oxygen\"|medium|oxygen"
      })
  void what_is_wrong_is_told_in_one_line(String what, String instead, String place, String said) {
    String wrong = DAY.replace(what, instead == null ? "" : instead);
    assertThat(wrong).isNotEqualTo(DAY);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(wrong, TABLE))
        .withMessageContaining(place)
        .withMessageContaining(said)
        .satisfies(e -> assertThat(e.getMessage()).doesNotContain("\n"));
  }

  @Test
  void the_example_reads_from_disk() throws WrongFileException {
    List<Path> read = new ArrayList<>();
    DayJob job = Disk.day(Path.of("..", "days", "mill-lane", "joinery.json"), read);
    assertThat(read)
        .extracting(path -> path.getFileName().toString())
        .containsExactly("joinery.json", "spray-booth.csv");
    assertThat(job.day().compressors()).hasSize(2);
  }
}
