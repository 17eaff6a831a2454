package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.quantity.NominalThreadSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Standard adapters with flares, ports, M5 and claws: the rules said once more, and what the search makes of them. */
class FormShapesTest {

  /** Tubes of flares with the pipe size nearest to each, by hand; the smaller of two that are as near. */
  private static final Map<String, String> PIPE_OF_TUBE = new LinkedHashMap<>();

  static {
    String[] pairs = {
      "1/8", "1/8", "3/16", "1/8", "1/4", "1/4", "5/16", "1/4", "3/8", "3/8", "7/16", "3/8", "1/2",
      "1/2", "5/8", "1/2", "3/4", "3/4", "7/8", "3/4", "1", "1", "1-1/4", "1-1/4", "1-1/2", "1-1/2",
      "2", "2"
    };
    for (int i = 0; i < pairs.length; i += 2) {
      PIPE_OF_TUBE.put(pairs[i], pairs[i + 1]);
    }
  }

  private static final String[] TUBES_37 = {
    "1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "7/8", "1", "1-1/4", "1-1/2", "2"
  };
  private static final String[] THREADS_37 = {
    "5/16-24",
    "3/8-24",
    "7/16-20",
    "1/2-20",
    "9/16-18",
    "3/4-16",
    "7/8-14",
    "1-1/16-12",
    "1-3/16-12",
    "1-5/16-12",
    "1-5/8-12",
    "1-7/8-12",
    "2-1/2-12"
  };
  private static final String[] TUBES_45 = {
    "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "5/8", "3/4", "7/8", "1"
  };
  private static final String[] THREADS_45 = {
    "5/16-24",
    "3/8-24",
    "7/16-20",
    "1/2-20",
    "5/8-18",
    "11/16-16",
    "3/4-16",
    "7/8-14",
    "1-1/16-14",
    "1-1/4-12",
    "1-3/8-12"
  };

  /** The pipe thread that passes about as much as a metric port: a choice of the library. */
  private static final String[][] METRIC = {
    {"M10x1", "1/8"}, {"M12x1.5", "1/4"}, {"M14x1.5", "1/4"}, {"M16x1.5", "3/8"},
    {"M18x1.5", "3/8"}, {"M22x1.5", "1/2"}, {"M27x2", "3/4"}, {"M33x2", "1"}
  };

  /** The sizes of pipe threads one step below and above one, and itself. */
  private static List<String> sizesAbout(String size) {
    List<NominalThreadSize> all = List.of(NominalThreadSize.values());
    int middle = all.indexOf(NominalThreadSize.parse(size));
    return all.subList(Math.max(0, middle - 1), Math.min(all.size(), middle + 2)).stream()
        .map(NominalThreadSize::label)
        .toList();
  }

  private static List<String> sizesAboutTube(String tube) {
    return sizesAbout(Objects.requireNonNull(PIPE_OF_TUBE.get(tube), tube));
  }

  private static Set<String> wanted() {
    Set<String> wanted = new TreeSet<>();
    flares(wanted, "37° flare ", TUBES_37, THREADS_37, List.of("%s NPT ", "G %s "));
    flares(wanted, "45° flare ", TUBES_45, THREADS_45, List.of("%s NPT "));
    for (int i = 0; i < TUBES_37.length; i++) {
      String stud = "port adapter " + THREADS_37[i] + " male with O-ring × ";
      wanted.add(stud + "37° flare " + THREADS_37[i] + " male");
      wanted.add(stud + "37° flare " + THREADS_37[i] + " female swivel");
      for (String size : sizesAboutTube(TUBES_37[i])) {
        wanted.add(stud + size + " NPT female");
      }
    }
    for (String[] metric : METRIC) {
      for (String size : sizesAbout(metric[1])) {
        wanted.add("port adapter " + metric[0] + " male with O-ring × " + size + " NPT female");
        wanted.add("port adapter " + metric[0] + " male with O-ring × G " + size + " female");
      }
    }
    for (String small : List.of("M5", "10-32")) {
      for (String tube : List.of("1/8 in", "5/32 in", "1/4 in", "3 mm", "4 mm", "6 mm")) {
        wanted.add("push-in connector " + tube + " push-in × " + small + " male");
      }
      wanted.add("hose tail 4 mm barb × " + small + " male");
      for (String eighth : List.of("1/8 NPT ", "R 1/8 ", "G 1/8 ")) {
        wanted.add("adapter " + eighth + "male × " + small + " female");
        wanted.add("adapter " + small + " male × " + eighth.replace("R ", "Rc ") + "female");
      }
    }
    for (String head : List.of("European", "two-lug")) {
      for (String bore : List.of(
          "10 mm", "12.5 mm", "16 mm", "19 mm", "20 mm", "25 mm", "3/8 in", "1/2 in", "5/8 in",
          "3/4 in", "1 in")) {
        wanted.add("claw hose tail " + head + " claw × " + bore + " barb");
      }
    }
    for (String bore : List.of("51 mm", "2 in")) {
      wanted.add("claw hose tail four-lug claw × " + bore + " barb");
    }
    for (String gender : List.of("male", "female")) {
      for (String size : List.of("1-1/4", "1-1/2", "2")) {
        wanted.add("claw adapter four-lug claw × " + size + " NPT " + gender);
      }
      for (String size : List.of("1/4", "3/8", "1/2", "3/4", "1", "1-1/4")) {
        wanted.add("claw adapter European claw × G " + size + " " + gender);
      }
      for (String size : List.of("1/4", "3/8", "1/2", "3/4", "1")) {
        wanted.add("claw adapter two-lug claw × " + size + " NPT " + gender);
      }
    }
    return wanted;
  }

  private static void flares(
      Set<String> wanted, String form, String[] tubes, String[] threads, List<String> families) {
    for (int i = 0; i < tubes.length; i++) {
      String nose = form + threads[i] + " male";
      String nut = form + threads[i] + " female swivel";
      wanted.add("flare union " + nose + " × " + nose);
      wanted.add("swivel union " + nut + " × " + nut);
      for (String size : sizesAboutTube(tubes[i])) {
        for (String family : families) {
          for (String gender : List.of("male", "female")) {
            String pipe = family.formatted(size) + gender;
            wanted.add("flare adapter " + nose + " × " + pipe);
            wanted.add("swivel adapter " + nut + " × " + pipe);
          }
        }
      }
    }
  }

  private static boolean isOfForms(End end) {
    return end instanceof End.Formed || end instanceof End.Claw;
  }

  @Test
  void the_catalogue_holds_what_its_rules_say_of_forms_and_claws_and_nothing_else() {
    List<String> held = StandardAdapter.make().stream()
        .filter(adapter -> isOfForms(adapter.one()) || isOfForms(adapter.other()))
        .map(StandardAdapter::name)
        .toList();
    assertThat(new TreeSet<>(held)).isEqualTo(wanted()).hasSameSizeAs(held);
  }

  @ParameterizedTest(name = "{0} and {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "37° flare 9/16-18 male | 9/16-18 O-ring port | port adapter 9/16-18 male with O-ring × 37° flare 9/16-18 female"
            + " swivel",
        "37° flare 9/16-18 male | 37° flare 9/16-18 male | swivel union 37° flare 9/16-18 female swivel × 37° flare"
            + " 9/16-18 female swivel",
        "37° flare 9/16-18 nut | 37° flare 9/16-18 nut | flare union 37° flare 9/16-18 male × 37° flare 9/16-18 male",
        "37° flare 9/16-18 nut | 3/8 NPT female | flare adapter 37° flare 9/16-18 male × 3/8 NPT male",
        "37° flare 9/16-18 male | G 3/8 port | swivel adapter 37° flare 9/16-18 female swivel × G 3/8 male",
        "45° flare 7/16-20 male | 1/4 NPT female | swivel adapter 45° flare 7/16-20 female swivel × 1/4 NPT male",
        "9/16-18 O-ring port | 3/8 NPT male | port adapter 9/16-18 male with O-ring × 3/8 NPT female",
        "M14x1.5 port | G 1/4 male | port adapter M14x1.5 male with O-ring × G 1/4 female",
        "G 1/4 port | 1/4 NPT male | adapter 1/4 NPT female × G 1/4 male",
        "G 1/4 port | 8 mm tube | push-in connector 8 mm push-in × G 1/4 male",
        "G 1/4 male with washer | 1/4 NPT male | female adapter coupling 1/4 NPT female × G 1/4 female",
        "M5 female | 4 mm tube | push-in connector 4 mm push-in × M5 male",
        "M5 female | 1/8 NPT male | adapter M5 male × 1/8 NPT female",
        "10-32 female | 1/8 NPT male | adapter 10-32 male × 1/8 NPT female",
        "10-32 female | 4 mm tube | push-in connector 4 mm push-in × 10-32 male",
        "M5 male | G 1/8 port | adapter G 1/8 male × M5 female",
        "two-lug claw | 1/2 NPT male | claw adapter two-lug claw × 1/2 NPT female",
        "two-lug claw | 3/4 in hose | claw hose tail two-lug claw × 3/4 in barb",
        "European claw | G 3/4 female | claw adapter European claw × G 3/4 male"
      })
  void one_piece_goes_between_a_form_and_another_end(String one, String other, String adapter) {
    for (Mating mating : List.of(
        Mating.of(End.parse(one), End.parse(other)), Mating.of(End.parse(other), End.parse(one)))) {
      assertThat(mating.between()).extracting(StandardAdapter::name).containsExactly(adapter);
      assertThat(mating.reason())
          .endsWith("Between them goes a" + (adapter.startsWith("a") ? "n " : " ") + adapter + ".");
    }
  }

  /** The piece is made, and may not go on the head that is there: that is said, and none is named. */
  @Test
  void a_four_lug_claw_and_a_thread_are_told_why_no_piece_is_named() {
    assertThat(StandardAdapter.all())
        .extracting(StandardAdapter::name)
        .contains("claw adapter four-lug claw × 1-1/2 NPT female");
    for (Mating mating : List.of(
        Mating.of(End.parse("four-lug claw"), End.parse("1-1/2 NPT male")),
        Mating.of(End.parse("1/2 NPT female"), End.parse("four-lug claw")))) {
      assertThat(mating.between()).isEmpty();
      assertThat(mating.reason())
          .contains("claw adapters from a four-lug claw to 1-1/4, 1-1/2 or 2 NPT (from memory)")
          .endsWith("ask the maker of the head for the one that goes on it.")
          .doesNotContain("no standard adapter has an end");
    }
  }

  @Test
  void flares_of_two_angles_meet_through_a_pipe_thread_and_claws_of_two_heads_through_hose() {
    assertThat(Mating.of(End.parse("37° flare 7/16-20 male"), End.parse("45° flare 7/16-20 nut"))
            .between())
        .extracting(StandardAdapter::name)
        .containsExactly(
            "swivel adapter 37° flare 7/16-20 female swivel × 1/4 NPT male",
            "flare adapter 45° flare 7/16-20 male × 1/4 NPT female");
    assertThat(Mating.of(End.parse("two-lug claw"), End.parse("European claw")).between())
        .extracting(StandardAdapter::name)
        .containsExactly(
            "claw hose tail two-lug claw × 1 in barb",
            "length of 1 in hose",
            "claw hose tail European claw × 1 in barb");
  }

  /** A way through a form that neither end has costs more than a piece between the two standards. */
  @Test
  void no_way_goes_through_a_form_that_neither_end_has() {
    for (StandardAdapter adapter :
        Mating.of(End.parse("1/4 NPSM male"), End.parse("G 1/4 male")).between()) {
      assertThat(isOfForms(adapter.one()) || isOfForms(adapter.other())).isFalse();
    }
    assertThat(cost("flare union 37° flare 9/16-18 male × 37° flare 9/16-18 male"))
        .isZero();
    assertThat(cost("flare adapter 37° flare 9/16-18 male × 3/8 NPT male")).isEqualTo(10_000);
    assertThat(cost("flare adapter 37° flare 9/16-18 male × 1/2 NPT male")).isEqualTo(10_001);
    assertThat(cost("port adapter M14x1.5 male with O-ring × 3/8 NPT female")).isEqualTo(10_001);
    assertThat(cost("port adapter 9/16-18 male with O-ring × 37° flare 9/16-18 male"))
        .isZero();
    assertThat(cost("adapter M5 male × 1/8 NPT female")).isEqualTo(10_000);
    assertThat(cost("claw adapter two-lug claw × 1/2 NPT female")).isEqualTo(10_000);
  }

  private static int cost(String name) {
    return AdapterSearch.cost(StandardAdapter.all().stream()
        .filter(adapter -> adapter.name().equals(name))
        .findFirst()
        .orElseThrow());
  }
}
