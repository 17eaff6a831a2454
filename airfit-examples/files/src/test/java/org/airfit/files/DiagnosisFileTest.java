package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.Diagnosis;
import org.airfit.run.DiagnosisVerdict;
import org.airfit.run.GaugeReading;
import org.airfit.run.Suspect;
import org.airfit.run.ToolState;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DiagnosisFileTest {

  private static final String FILE = """
      {"airfitDiagnosis": 1, "title": "Slow", "customer": "K.", "atmosphere": "14.7 psia", "temperature": "68 °F",
       "supply": {"pressure": "110 psig", "holdsWithin": "1 psi"},
       "line": [
         {"kind": "pipe", "name": "drop", "bore": "0.622 in", "length": "20 ft", "roughness": "0.045 mm"},
         {"kind": "regulator", "set": "100 psig", "capacity": "C 12 dm3/(s bar), b 0.3", "droop": "3 psi",
          "droopAt": "20 scfm"},
         {"kind": "coupling", "conductance": "5 dm3/(s bar)", "criticalPressureRatio": 0.3, "lossKnownWithin": 0.2},
         {"kind": "hose", "bore": "0.375 in", "length": "25 ft", "wall": "smooth rubber hose"}
       ],
       "tool": {"name": "wrench", "air": "22 scfm", "pressure": "90 psig", "follows": true, "airKnownWithin": 0.15},
       "suspects": ["hose", "coupling", "regulator", "supply", "tool", "leak behind coupling"],
       "gauges": [
         {"name": "A", "class": "1.6", "top": "160 psig", "step": "2 psi"},
         {"name": "B", "limit": "2 psi", "top": "160 psig", "step": "1 psi"}
       ],
       "readings": [
         {"gauge": "A", "behind": "regulator", "atRest": "100 psig", "running": "96 psig"},
         {"gauge": "B", "behind": "hose", "atRest": "101 psig", "running": "60 psig"},
         {"gauge": "B", "behind": "coupling", "running": "92 psig"}
       ]}
      """;

  private static DiagnosisJob read(String text) throws WrongFileException {
    return DiagnosisFile.read(Document.of("slow.json", Json.read("slow.json", text)));
  }

  @Test
  void a_file_becomes_a_run_with_its_suspects_and_readings() throws WrongFileException {
    DiagnosisJob job = read(FILE);
    assertThat(job.title()).isEqualTo("Slow");
    assertThat(job.units()).isEqualTo(UnitSystem.US);
    assertThat(job.test().run().names()).containsExactly("drop", "regulator", "coupling", "hose");
    assertThat(job.test().suspects())
        .containsExactly(
            Suspect.bore("hose"),
            Suspect.part("coupling"),
            Suspect.droop("regulator"),
            Suspect.droop("supply"),
            Suspect.toolAir(),
            Suspect.leakBehind("coupling"));
    assertThat(job.readings()).hasSize(5);
    GaugeReading last = job.readings().get(4);
    assertThat(last.place()).isEqualTo("coupling");
    assertThat(last.state()).isEqualTo(ToolState.RUNNING);
    assertThat(last.shown()).isEqualTo(GaugePressure.ofPsi(92.0));
    assertThat(last.gauge().limit().psi()).isCloseTo(2.0, within(1.0e-12));
    assertThat(job.readings().get(0).gauge().limit().psi()).isCloseTo(2.56, within(1.0e-9));
    Diagnosis found = job.test().read(job.readings());
    assertThat(found.explanations().get(0).suspect()).isEqualTo(Suspect.bore("hose"));
  }

  @Test
  void units_suspects_and_what_holds_may_be_left_out_or_told() throws WrongFileException {
    String any = FILE.replaceFirst("\"suspects\": \\[[^]]*],", "")
        .replace(", \"holdsWithin\": \"1 psi\"", "")
        .replace("\"title\"", "\"units\": \"SI\", \"title\"");
    assertThat(read(any).units()).isEqualTo(UnitSystem.SI);
    assertThat(read(any).test().suspects()).hasSize(10);
    assertThat(read(FILE.replaceFirst("\"suspects\": \\[[^]]*]", "\"suspects\": \"any\""))
            .test()
            .suspects())
        .hasSize(10);
    DiagnosisJob unmarked = read(FILE.replace("\"lossKnownWithin\": 0.2", "\"unmarked\": true"));
    assertThat(unmarked.test().unmarkedElement()).hasValue(Suspect.part("coupling"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "\"airfitDiagnosis\": 1; \"airfitDiagnosis\": 3; airfitDiagnosis; accepted: 1",
        "\"110 psig\"; \"110\"; supply.pressure; psig",
        "\"1 psi\"}; \"400 psi\"}; supply.holdsWithin; at most 10 bar",
        "\"kind\": \"hose\"; \"kind\": \"rope\"; line[4].kind; coupling",
        "\"criticalPressureRatio\": 0.3; \"criticalPressureRatio\": 1.3; line[3].criticalPressureRatio; [0, 1)",
        "\"lossKnownWithin\": 0.2; \"lossKnownWithin\": 20; line[3].lossKnownWithin; [0, 1]",
        "\"lossKnownWithin\": 0.2; \"lossKnown\": 0.2; line[3].lossKnown; lossKnownWithin",
        "\"droop\": \"3 psi\"; \"droop\": \"130 psi\"; line[2].droop; not below",
        "\"hose\", \"coupling\", \"reg; \"hoses\", \"coupling\", \"reg; suspects[1]; \"leak behind\"",
        "\"class\": \"1.6\"; \"class\": \"2\"; gauges[1].class; EN 837-1",
        "\"limit\": \"2 psi\", ; ''; gauges[2]; its class",
        "{\"name\": \"B\"; {\"name\": \"A\"; gauges[2]; call it otherwise",
        "{\"gauge\": \"A\"; {\"gauge\": \"C\"; readings[1].gauge; accepted: A, B",
        "\"behind\": \"hose\"; \"behind\": \"wall\"; slow.json; [supply, drop, regulator, coupling, hose]",
        "\"60 psig\"; \"600 psig\"; readings[2].running; look at its scale",
        "\"running\": \"92 psig\"; \"runing\": \"92 psig\"; readings[3].runing; running",
        "\"name\": \"drop\"; \"name\": \"hose\"; line[4]; must differ",
        "\"temperature\"; \"medium\": \"nitrogen\", \"temperature\"; medium; nitrogen"
      })
  void a_wrong_field_is_told_by_its_name(String from, String to, String place, String accepted) {
    assertThat(FILE).contains(from);
    String wrong = FILE.replaceFirst(Pattern.quote(from), to);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(wrong))
        .withMessageContaining(place)
        .withMessageContaining(accepted);
  }

  @Test
  void a_second_unmarked_part_is_refused() {
    String two = FILE.replace("\"lossKnownWithin\": 0.2", "\"unmarked\": true")
        .replace("\"wall\": \"smooth", "\"unmarked\": true, \"wall\": \"smooth");
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(two))
        .withMessageContaining("line[4]")
        .withMessageContaining("keep one");
  }

  /** Of the example: 1.8 bar more are lost than told, and one gauge more tells on which side of the coupling. */
  @Test
  void the_example_leaves_several_explanations_and_says_where_to_read() throws WrongFileException {
    List<Path> read = new ArrayList<>();
    Path file = Path.of("..", "diagnoses", "saddler-lane", "slow-grinder.json");
    DiagnosisJob job = Disk.diagnosis(file, read);
    assertThat(read).containsExactly(file);
    Diagnosis found = job.test().read(job.readings());
    assertThat(found.verdict()).isEqualTo(DiagnosisVerdict.SEVERAL);
    assertThat(found.next().orElseThrow().place()).isEqualTo("coupling");
  }
}
