package org.airfit.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.airfit.measure.PartSpread;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.GaugeBall;
import org.airfit.plug.GrooveForm;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReferenceSetFileTest {

  private static final Path WORKSHOP = Path.of("..", "sets", "workshop.csv");

  @TempDir
  Path folder;

  private ReferenceSet throughFile(ReferenceSet set, String name) throws WrongFileException {
    Path path = folder.resolve(name);
    Disk.write(path, set);
    return Disk.referenceSet(path);
  }

  private static ReferenceSet ofCsv(String file, String text) throws WrongFileException {
    return ReferenceSetFile.read(Document.of(file, Csv.read(file, text)));
  }

  private static ReferenceSet ofJson(String file, String text) throws WrongFileException {
    return ReferenceSetFile.read(Document.of(file, Json.read(file, text)));
  }

  private static void assertSame(ReferenceSet read, ReferenceSet set) {
    assertThat(read.name()).isEqualTo(set.name());
    assertThat(read.sockets()).isEqualTo(set.sockets());
    assertThat(read.profiles()).hasSameSizeAs(set.profiles());
    for (int i = 0; i < set.profiles().size(); i++) {
      PlugProfile one = read.profiles().get(i);
      PlugProfile other = set.profiles().get(i);
      assertThat(one.id()).isEqualTo(other.id());
      assertThat(one.displayName()).isEqualTo(other.displayName());
      assertThat(one.aliases()).containsExactlyElementsOf(other.aliases());
      assertThat(one.provenance()).isEqualTo(other.provenance());
      assertThat(one.source()).isEqualTo(other.source());
      assertThat(one.grooveForm()).isEqualTo(other.grooveForm());
      assertThat(one.tipLengthBall()).isEqualTo(other.tipLengthBall());
      assertThat(one.dimensions()).as("to the last bit").isEqualTo(other.dimensions());
      assertThat(one.decidingDimensions()).isEqualTo(other.decidingDimensions());
      assertThat(one.missingDimensions()).isEqualTo(other.missingDimensions());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"birds.csv", "birds.json", "BIRDS.CSV"})
  void the_demo_set_comes_back_as_it_was(String name) throws WrongFileException {
    assertSame(throughFile(DemoProfiles.birds(), name), DemoProfiles.birds());
  }

  /** Sizes with all their digits, names with commas, bars, quotation marks and line ends, every kind of spread. */
  @ParameterizedTest
  @ValueSource(strings = {"odd.csv", "odd.json"})
  void any_set_comes_back_to_the_last_bit(String name) throws WrongFileException {
    SplittableRandom random = new SplittableRandom(17);
    for (int i = 0; i < 200; i++) {
      ReferenceSet set = oddSet(random);
      assertSame(throughFile(set, name), set);
    }
  }

  private static final List<String> WORDS = List.of(
      "A",
      "a, b",
      "a | b",
      "back\\slash",
      "\"quoted\"",
      "two\nlines",
      " spaces ",
      "ä°µ",
      "5",
      "semi;colon");

  private static <T> T any(SplittableRandom random, List<T> choices) {
    return choices.get(random.nextInt(choices.size()));
  }

  private static String word(SplittableRandom random) {
    return any(random, WORDS) + random.nextInt(1000);
  }

  private static Length length(SplittableRandom random, double low, double high) {
    double mm = random.nextDouble(low, high);
    return random.nextBoolean() ? Length.ofMillimetres(mm) : Length.ofInches(mm / 25.4);
  }

  private static PartSpread spread(SplittableRandom random) {
    Length size = length(random, 5.0, 30.0);
    Length deviation = length(random, 0.001, 0.4);
    return switch (random.nextInt(3)) {
      case 0 -> PartSpread.normal(size, deviation);
      case 1 -> PartSpread.limits(size, size.plus(deviation));
      default -> new PartSpread.Sample(9 + random.nextInt(20), size, deviation);
    };
  }

  private static ReferenceSet oddSet(SplittableRandom random) {
    List<PlugProfile> profiles = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      Provenance.Kind kind = any(random, List.of(Provenance.Kind.values()));
      PlugProfile.Builder builder = PlugProfile.builder(
              "p" + i + "-" + word(random).replace(',', ';')) // an id holds no comma
          .displayName(word(random))
          .from(
              new Provenance(
                  kind, kind == Provenance.Kind.USER_MEASURED ? 1 + random.nextInt(9) : 0),
              new Source(any(random, List.of(Basis.values())), word(random)))
          .confirmUnusual();
      for (int k = random.nextInt(3); k > 0; k--) {
        builder.aliases(word(random));
      }
      if (random.nextBoolean()) {
        builder.grooveForm(any(random, List.of(GrooveForm.values())));
      }
      if (random.nextBoolean()) {
        builder.tipLengthBy(new GaugeBall(length(random, 1.0, 9.0)));
      }
      builder.dimension(Dimension.TIP_DIAMETER, spread(random));
      if (random.nextBoolean()) {
        builder.dimension(Dimension.SHOULDER_DIAMETER, spread(random));
        if (random.nextBoolean()) {
          builder.deciding(List.of(Dimension.SHOULDER_DIAMETER, Dimension.TIP_DIAMETER));
        }
      }
      if (random.nextInt(3) == 0) {
        builder.deciding(List.of(Dimension.TIP_DIAMETER));
      }
      profiles.add(builder.build());
    }
    ReferenceSet set = ReferenceSet.of(word(random), profiles);
    return random.nextBoolean()
        ? set
        : set.withSockets(List.of(new UniversalSocket(
            word(random),
            new LinkedHashSet<>(List.of(profiles.get(2).id(), profiles.get(0).id())),
            new Source(Basis.MEASURED, word(random)))));
  }

  /** By hand: of two known sizes the tip decides, and the seven that nobody knows no longer matter. */
  @Test
  void which_dimensions_decide_the_mating_may_be_told() throws WrongFileException {
    ReferenceSet table = ofCsv("shop.csv", """
        record,id,name,from,source,basis,deciding,dimension,low,high
        set,,Shop,,,,,,,
        profile,tern,Tern,invented,made up,invented for demonstration,tip diameter,tip diameter,11.8 mm,12 mm
        profile,tern,,,,,,groove width,3 mm,3.2 mm
        """);
    ReferenceSet object = ofJson("shop.json", """
        {"set": "Shop", "profiles": [{"id": "tern", "name": "Tern", "from": "invented", "source": "made up",
          "basis": "invented for demonstration", "deciding": ["tip diameter"],
          "dimensions": {"tip diameter": {"low": "11.8 mm", "high": "12 mm"},
            "groove width": {"low": "3 mm", "high": "3.2 mm"}}}]}
        """);
    for (ReferenceSet set : List.of(table, object)) {
      PlugProfile tern = set.profiles().get(0);
      assertThat(tern.decidingDimensions()).containsExactly(Dimension.TIP_DIAMETER);
      assertThat(tern.missingDimensions()).isEmpty();
    }
    assertSame(object, table);
    assertSame(throughFile(table, "told.csv"), table);
    assertSame(throughFile(table, "told.json"), table);
  }

  @Test
  void the_table_can_be_turned_into_json_and_back() throws IOException, WrongFileException {
    ReferenceSet workshop = Disk.referenceSet(WORKSHOP);
    assertThat(workshop.profiles()).hasSizeGreaterThan(2);
    assertThat(workshop.sockets()).hasSize(1);
    assertSame(throughFile(workshop, "workshop.json"), workshop);
    assertSame(throughFile(workshop, "workshop.csv"), workshop);
    assertThat(Files.readString(folder.resolve("workshop.csv")))
        .as("the file in sets is written as the program writes it")
        .isEqualTo(Files.readString(WORKSHOP));
  }

  @Test
  void a_length_is_written_with_the_fewest_digits_that_do() {
    assertThat(ProfileFields.text(Length.ofMillimetres(11.9))).isEqualTo("11.90 mm");
    assertThat(ProfileFields.text(Length.ofInches(0.5))).isEqualTo("12.70 mm");
    Length third = Length.ofMillimetres(1.0 / 3.0);
    assertThat(Length.parse(ProfileFields.text(third))).isEqualTo(third);
  }

  @Test
  void readings_of_known_plugs_may_be_typed_as_they_are() throws WrongFileException {
    ReferenceSet set = ofCsv("x.csv", """
        record;id;name;from;pieces;source;basis;dimension;readings
        set;;Bench;;;;;;
        profile;a;Ay;measured;5;by K. with the shop's caliper, May;measured;tip diameter;\
        11.90 mm | 11.92 mm | 11.91 mm | 0.4685 in | 11.89 mm

        """);
    PartSpread spread =
        set.profile("a").orElseThrow().spread(Dimension.TIP_DIAMETER).orElseThrow();
    assertThat(spread).isInstanceOf(PartSpread.Sample.class);
    assertThat(((PartSpread.Sample) spread).pieces()).isEqualTo(5);
    assertThat(set.weakestProvenance().canIdentify()).isTrue();
  }

  static Stream<Arguments> wrong_tables() {
    String first =
        "\nprofile,terns,Tern,T,,,invented,,made up,invented for demonstration,,tip diameter,11.9 mm,0.03 mm,,,,,,";
    return Stream.of(
        Arguments.of("11.9 mm", "11.9", "row 3, column nominal: \"11.9\"", "unit"),
        Arguments.of("11.9 mm", "0.4685 mm", "row 3: ", "inches typed as millimetres"),
        Arguments.of(
            "tip diameter", "tip dia", "row 3, column dimension", "accepted: tip diameter"),
        Arguments.of(
            "invented,,made", "hearsay,,made", "row 3, column from: was \"hearsay\"", "standard"),
        Arguments.of(
            "invented,,made", "measured,,made", "row 3, column pieces: is missing", "such as 5"),
        Arguments.of(
            "invented,,made",
            "measured,few,made",
            "row 3, column pieces: was \"few\"",
            "whole number"),
        Arguments.of("made up", "", "row 3, column source: is missing", "in words"),
        Arguments.of(
            "invented for demonstration", "", "row 3, column basis: is missing", "from memory"),
        Arguments.of("nominal,", "typical,", "row 1: \"typical\" is no column", "nominal"),
        Arguments.of("nominal,", "low,", "row 1: column low stands twice", "leave one out"),
        Arguments.of(
            "0.03 mm,,,,,,",
            "0.03 mm,11.8 mm,12 mm,,,,",
            "row 3: holds the size more",
            "low and high"),
        Arguments.of("11.9 mm,0.03 mm", ",", "row 3: holds no size", "nominal and deviation"),
        Arguments.of("0.03 mm", "", "row 3, column deviation: is missing", "0.03 mm"),
        Arguments.of("Tern,T", "Tern,T||U", "row 3, column letters", "A | B"),
        Arguments.of("set,,Shop", "profil,,Shop", "row 2, column record", "set, profile, socket"),
        Arguments.of("set,,Shop,,,,,,,,,,,,,,,,,\n", "\n", "has no name", "under record"),
        Arguments.of(
            first,
            first + first,
            "row 4, column dimension: \"tip diameter\" stands twice",
            "leave one out"),
        Arguments.of(
            first,
            first + first.replace("tip d", "collar d").replace("Tern", "Stern"),
            "row 4, column name: was \"Stern\"",
            "type the same"),
        Arguments.of(
            first, first + "\nset,,Other,,,,,,,,,,,,,,,,,", "row 4, column name", "second name"),
        Arguments.of(
            first,
            first + "\nsocket,,wide,,,,,,said,from memory,,,,,,,,,,terns | owls",
            "owls",
            "add the profile"),
        Arguments.of(
            "0.03 mm,,,,,,", "0.03 mm,,,,,,,more", "row 3: has more cells", "quotation marks"),
        Arguments.of("made up", "\"made up", "row 3, cell 9", "never closed"),
        Arguments.of("made up", "ma\"de up", "row 3, cell 9", "double those"));
  }

  @ParameterizedTest
  @MethodSource("wrong_tables")
  void a_wrong_table_is_told_by_file_row_column_and_what_to_type(
      String from, String to, String where, String what) {
    String table = """
        record,id,name,letters,grooveForm,ball,from,pieces,source,basis,confirmed,\
        dimension,nominal,deviation,low,high,count,mean,readings,takes
        set,,Shop,,,,,,,,,,,,,,,,,
        profile,terns,Tern,T,,,invented,,made up,invented for demonstration,,tip diameter,11.9 mm,0.03 mm,,,,,,""";
    assertThat(table).contains(from);
    String wrong = table.replace(from, to);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofCsv("shop.csv", wrong))
        .withMessageStartingWith("shop.csv: ")
        .withMessageContaining(where)
        .withMessageContaining(what);
  }

  @Test
  void an_empty_table_is_told_what_to_begin_with() {
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofCsv("shop.csv", "\ufeff"))
        .withMessageContaining("type the heading record,id,name");
  }

  static Stream<Arguments> wrong_json() {
    return Stream.of(
        Arguments.of("\"set\"", "\"sett\"", "set: is missing"),
        Arguments.of("\"basis\" : \"measured\"", "\"base\": 1", "profiles[1].basis: is missing"),
        Arguments.of(
            "\"id\" : \"a\"",
            "\"id\": \"a\", \"deciding\": [\"tip diamter\"]",
            "profiles[1].deciding: \"tip diamter\" is no dimension of a plug; nearest: tip diameter"),
        Arguments.of(
            "\"id\" : \"a\"",
            "\"id\": \"a\", \"deciding\": []",
            "profiles[1].deciding: deciding dimensions of profile a must be at least one"),
        Arguments.of(
            "\"id\" : \"a\"",
            "\"id\": \"a\", \"deciding\": [\"bore\"]",
            "profiles[1]: deciding dimensions of profile a must be among those it knows"),
        Arguments.of("\"count\" : 6", "\"count\": 1", "pieces must be at least 2"),
        Arguments.of("\"count\" : 6", "\"count\": \"6\"", "a whole number without"),
        Arguments.of("\"ball\" : \"4.00 mm\"", "\"ball\": \"40 mm\"", "profiles[1].ball: diameter"),
        Arguments.of("\"grooveForm\" : \"flat\"", "\"grooveForm\": \"oval\"", "V-shaped"));
  }

  @ParameterizedTest
  @MethodSource("wrong_json")
  void a_wrong_json_file_is_told_by_its_field(String from, String to, String what) {
    PlugProfile profile = PlugProfile.builder("a")
        .from(Provenance.userMeasured(6), Source.measured("by K."))
        .grooveForm(GrooveForm.FLAT)
        .tipLengthBy(new GaugeBall(Length.ofMillimetres(4.0)))
        .dimension(
            Dimension.TIP_DIAMETER,
            new PartSpread.Sample(6, Length.ofMillimetres(12.0), Length.ofMillimetres(0.02)))
        .build();
    String json = Json.write(ReferenceSetFile.toObject(ReferenceSet.of("s", List.of(profile))));
    assertThat(json).contains(from);
    String wrong = json.replace(from, to);
    assertThatExceptionOfType(WrongFileException.class)
        .isThrownBy(() -> ofJson("shop.json", wrong))
        .withMessageStartingWith("shop.json: ")
        .withMessageContaining(what);
  }

  @Test
  void a_set_that_would_not_read_back_is_not_written() {
    ReferenceSet blank = ReferenceSet.of(
        "x",
        List.of(PlugProfile.builder("a")
            .displayName("")
            .from(Provenance.synthetic(), Source.demo("x"))
            .dimension(
                Dimension.TIP_DIAMETER,
                PartSpread.normal(Length.ofMillimetres(12.0), Length.ofMillimetres(0.1)))
            .build()));
    Path path = folder.resolve("x.csv");
    assertThatExceptionOfType(WrongFileException.class).isThrownBy(() -> Disk.write(path, blank));
    assertThat(path).doesNotExist();
  }
}
