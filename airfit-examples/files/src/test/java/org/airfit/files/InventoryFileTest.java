package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.airfit.joint.End;
import org.airfit.plug.PairOutcome;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.safety.Medium;
import org.airfit.select.Bay;
import org.airfit.select.ChangeOver;
import org.airfit.select.ChangeOverVerdict;
import org.airfit.select.CouplingInventory;
import org.airfit.select.CouplingPlan;
import org.airfit.select.NotKept;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InventoryFileTest {

  private static final Path WEIR_STREET = Path.of("..", "shops", "weir-street", "inventory.json");

  @TempDir
  Path folder;

  private static InventoryJob example() throws WrongFileException {
    return Disk.inventory(WEIR_STREET, new ArrayList<>());
  }

  private InventoryJob read(String text) throws IOException, WrongFileException {
    Path place = Files.createDirectories(folder.resolve("shops/here"));
    Path sets = Files.createDirectories(folder.resolve("sets"));
    Files.write(
        sets.resolve("workshop.csv"), Files.readAllBytes(Path.of("..", "sets", "workshop.csv")));
    Files.write(
        place.resolve("catalogue.json"),
        Files.readAllBytes(WEIR_STREET.resolveSibling("catalogue.json")));
    Path file = place.resolve("inventory.json");
    Files.write(file, text.getBytes(StandardCharsets.UTF_8));
    return Disk.inventory(file, new ArrayList<>());
  }

  @Test
  void the_example_says_what_its_fields_say() throws WrongFileException {
    List<Path> read = new ArrayList<>();
    InventoryJob job = Disk.inventory(WEIR_STREET, read);
    assertThat(read)
        .extracting(path -> String.valueOf(path.getFileName()))
        .containsExactly("inventory.json", "catalogue.json", "workshop.csv");
    assertThat(job.units()).isEqualTo(UnitSystem.US);
    CouplingInventory inventory = job.inventory();
    assertThat(inventory.air())
        .extracting(Bay::name)
        .containsExactly("assembly", "fettling", "paint");
    assertThat(inventory.apart()).singleElement().satisfies(bay -> {
      assertThat(bay.medium()).isEqualTo(Medium.BREATHING_AIR);
      assertThat(bay.sockets().get(0).takes()).isEqualTo(Set.of("hood line"));
      assertThat(bay.sockets().get(0).onto()).isEmpty();
    });
    Bay fettling = inventory.air().get(1);
    assertThat(fettling.pressure().orElseThrow().least()).isEqualTo(GaugePressure.ofPsi(95.0));
    assertThat(fettling.sockets().get(0).count()).isEqualTo(7);
    assertThat(fettling.sockets().get(0).onto()).hasValue(End.parse("3/8 NPT female"));
    assertThat(fettling.plugs()).extracting(Bay.Plugs::profile).containsExactly("gannet", "tern");
    Bay.Need grinder = fettling.plugs().get(0).need().orElseThrow();
    assertThat(grinder.pressure()).isEqualTo(GaugePressure.ofPsi(82.0));
    assertThat(grinder.hose().orElseThrow().least().bore().millimetres()).isEqualTo(12.7);
    assertThat(fettling.plugs().get(1).need()).isEmpty();
    assertThat(inventory.shelf()).hasSize(3);
    assertThat(inventory.labour().orElseThrow().perPlug()).isEqualTo(Money.parse("4 USD"));
    assertThat(inventory.restock().orElseThrow().deliveryDays()).isEqualTo(21);
    assertThat(inventory.pairs().get(0).outcome()).isEqualTo(PairOutcome.LETS_GO);
  }

  /**
   * By hand, to tern: fettling 7 sockets, 10 plugs of 3/8; paint 4 sockets with a reducing nipple, 5 plugs of 1/4. On the
   * shelf 2 sockets and 6 plugs of 1/4: 9 × 11.20 + 4 × 2.80 + 10 × 3.10 = 143.00 and work 11 × 9 + 15 × 4 = 159.00. To
   * gannet: 16 × 12.50 + 4 × 2.80 + (15 + 3 + 5) × 2.90 = 277.90, and work 16 × 9 + 23 × 4 = 236.00.
   */
  @Test
  void the_example_keeps_tern() throws WrongFileException {
    ChangeOver found = ChangeOver.of(example().inventory());
    assertThat(found.verdict()).isEqualTo(ChangeOverVerdict.CHANGE);
    CouplingPlan best = found.best().orElseThrow();
    assertThat(best.profiles()).containsExactly("tern");
    assertThat(best.total()).isEqualTo(Money.parse("302.00 USD"));
    assertThat(found.runnerUp().orElseThrow().profiles()).containsExactly("gannet");
    assertThat(found.runnerUp().orElseThrow().total()).isEqualTo(Money.parse("513.90 USD"));
    assertThat(found.notKept()).anySatisfy(why -> {
      assertThat(why.profile()).isEqualTo("skua");
      assertThat(why.cause()).isEqualTo(NotKept.Cause.NOT_TOLD_APART);
    });
    assertThat(found.steps()).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "\"airfitInventory\": 1; \"airfitInventory\": 2; airfitInventory; accepted: 1",
        "\"96 to 102 psig\"; \"96 to 102\"; bays[1].pressure; psig",
        "\"takes\": [\"tern\"]; \"takes\": [\"turn\"]; bays[1].sockets[1].takes[1]; tern",
        "\"takes\": [\"tern\"]; \"takes\": []; bays[1].sockets[1]; at least one",
        "\"count\": 12; \"count\": 0; bays[1].sockets[1]; [1, 1000], was 0",
        "\"profile\": \"gannet\"; \"profile\": \"ganet\"; bays[2].plugs[1].profile; gannet",
        "\"onto\": \"1/4 NPT female\"; \"on\": \"1/4 NPT female\"; bays[1].plugs[1].onto; is missing",
        "\"air\": \"9 to 10 scfm\"; \"air\": \"9 to 10\"; bays[3].plugs[1].air; scfm",
        "\"air\": \"9 to 10 scfm\",; ''; bays[3].plugs[1].needs; without air",
        "\"breathing air\"; \"diver air\"; bays[4].medium; breathing air",
        "\"part\": \"T-P14\"; \"part\": \"T-P15\"; inventory.json; part T-P15 on the shelf",
        "\"goes in and lets go\"; \"flies\"; pairs[1].happens; does not go in",
        "\"socket\": \"hood line\"; \"socket\": \"hod line\"; pairs[6].socket; hood line",
        "\"perPlug\": \"4.00 USD\"; \"perPlug\": \"4.00 EUR\"; labour; one currency",
        "\"risk\": 0.05; \"risk\": 5; restock; [0.001, 0.5]",
        "\"name\": \"paint\"; \"name\": \"assembly\"; inventory.json; stands twice",
        "\"temperature\"; \"medium\": \"oxygen\", \"temperature\"; medium; oxygen",
        "\"customer\"; \"custom\": 1, \"customer\"; custom; is no field here"
      })
  void a_wrong_field_is_told_by_its_name(String from, String to, String place, String accepted)
      throws IOException {
    String file = Files.readString(WEIR_STREET);
    assertThat(file).contains(from);
    String wrong = file.replaceFirst(Pattern.quote(from), to);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(wrong))
        .withMessageContaining(place)
        .withMessageContaining(accepted);
  }

  @Test
  void a_pair_may_be_told_of_a_universal_socket() throws Exception {
    String file = Files.readString(WEIR_STREET)
        .replace("\"takes\": [\"skua\"]", "\"takes\": [\"skua\", \"gannet\"]")
        .replace("\"tern\", \"socket\": \"skua\"", "\"tern\", \"socket\": \"skua/gannet\"");
    assertThat(ChangeOver.of(read(file).inventory()).possibleNow())
        .filteredOn(pair -> pair.plug().equals("tern") && pair.takes().size() == 2)
        .singleElement()
        .satisfies(pair -> assertThat(pair.outcome()).isEqualTo(PairOutcome.DOES_NOT_GO_IN));
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> read(Files.readString(WEIR_STREET)
            .replace("\"tern\", \"socket\": \"skua\"", "\"tern\", \"socket\": \"skua/gannet\"")))
        .withMessageContaining("pairs[4].socket");
  }

  @Test
  void units_and_what_is_not_counted_may_be_left_out() throws Exception {
    String file = Files.readString(WEIR_STREET)
        .replaceFirst("\"labour\": \\{[^}]*},", "\"units\": \"SI\",")
        .replaceFirst("\"restock\": \\{[^}]*},", "");
    InventoryJob job = read(file);
    assertThat(job.units()).isEqualTo(UnitSystem.SI);
    assertThat(job.inventory().labour()).isEqualTo(Optional.empty());
    assertThat(job.inventory().restock()).isEqualTo(Optional.empty());
    assertThat(ChangeOver.of(job.inventory()).best().orElseThrow().total())
        .isEqualTo(Money.parse("143.00 USD"));
  }
}
