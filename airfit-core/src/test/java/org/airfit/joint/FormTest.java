package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.Length;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Basis;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.Gender;
import org.airfit.thread.NamedThread;
import org.airfit.thread.ThreadDesignation;
import org.airfit.thread.ThreadFamily;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Flares, ports, studs, claws, water hoses and swivels: how they are read, printed and refused. */
class FormTest {

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "`37° flare, 9/16-18 male`, 37° flare 9/16-18 male",
        "37° flare 9/16-18 UNF male, 37° flare 9/16-18 male",
        "37 degree flare 7/16-20 male, 37° flare 7/16-20 male",
        "37 deg flared 7/16-20 M, 37° flare 7/16-20 male",
        "JIC 1-1/16-12 male, 37° flare 1-1/16-12 male",
        "#6 JIC 37° flare male, 37° flare 9/16-18 male",
        "37° flare -6 male, 37° flare 9/16-18 male",
        "37° flare 3/8 in tube male, 37° flare 9/16-18 male",
        "45° flare 3/8 in tube male, 45° flare 5/8-18 male",
        "45° flare 3/8\" male, 45° flare 5/8-18 male",
        "9/16\"-18 O-ring port, 9/16-18 O-ring port",
        "45º flare 1/4 tube male, 45° flare 7/16-20 male",
        "45 degree flare 7/16-20 nut, 45° flare 7/16-20 female swivel",
        "37° flare 9/16-18 female, 37° flare 9/16-18 female swivel",
        "37° flare 9/16-18 female swivel, 37° flare 9/16-18 female swivel",
        "37° flare 9/16-18 female fixed, 37° flare 9/16-18 female fixed",
        "37° flare 9/16-18 male swivel, 37° flare 9/16-18 male swivel",
        "37° cone 9/16-18 male, 37° flare 9/16-18 male",
        "inverted flare 7/16-24 nut, inverted flare 7/16-24 male swivel",
        "inverted flare 1/4 in tube male, inverted flare 7/16-24 male swivel",
        "inverted flare 7/16-24 female, inverted flare 7/16-24 female",
        "24° cone M14x1.5 male, 24° cone M14x1.5 male",
        "24° cone M14x1.5 nut, 24° cone M14x1.5 female swivel",
        "9/16-18 O-ring port, 9/16-18 O-ring port",
        "O-ring boss port 9/16-18, 9/16-18 O-ring port",
        "9/16-18 ORB, 9/16-18 O-ring port",
        "-6 ORB female, 9/16-18 O-ring port",
        "-6 ORB male, 9/16-18 male with O-ring",
        "9/16-18 male ORB, 9/16-18 male with O-ring",
        "JIC 6 male, 37° flare 9/16-18 male",
        "8 JIC female, 37° flare 3/4-16 female swivel",
        "6 ORB male, 9/16-18 male with O-ring",
        "9/16-18 UNF female with O-ring, 9/16-18 O-ring port",
        "-6 O-ring port, 9/16-18 O-ring port",
        "3/8 in tube O-ring port, 9/16-18 O-ring port",
        "9/16-18 port, 9/16-18 O-ring port",
        "9/16-18 male with O-ring, 9/16-18 male with O-ring",
        "9/16-18 ORING stud, 9/16-18 male with O-ring",
        "M14x1.5 O-ring port, M14x1.5 O-ring port",
        "M14x1.5 port, M14x1.5 O-ring port",
        "M14×1.5 male with O-ring, M14x1.5 male with O-ring",
        "m14 x 1.5 male with o-ring, M14x1.5 male with O-ring",
        "M14-1.5 male with O-ring, M14x1.5 male with O-ring",
        "M14x1.5 male with washer, M14x1.5 male with washer",
        "M14x1.5 male with bonded seal, M14x1.5 male with washer",
        "M14x1.5 male with ring, M14x1.5 male with ring",
        "M14x1.5 flat-face port, M14x1.5 flat-face port",
        "G 1/4 port, G 1/4 port",
        "1/4 BSPP port, G 1/4 port",
        "G 1/4 female port, G 1/4 port",
        "G 1/4 male with washer, G 1/4 male with washer",
        "G 1/2 stud with elastomer ring, G 1/2 male with ring",
        "G 1/2 male with O-ring, G 1/2 male with ring",
        "G 1/4 male swivel with washer, G 1/4 male with washer swivel",
        "G 1/4 stud, G 1/4 male",
        "1/4 NPT port, 1/4 NPT female",
        "1/4-18 NPT port, 1/4 NPT female",
        "Rc 1/4 port, Rc 1/4 female",
        "M5 male, M5 male",
        "M5x0.8 female, M5 female",
        "M5 port, M5 female",
        "M5 male with O-ring, M5 male with ring",
        "M5 male with washer, M5 male",
        "M7 male, M7 male",
        "two-lug claw, two-lug claw",
        "2-lug claw, two-lug claw",
        "`two-lug claw, North American`, two-lug claw",
        "two-lug universal coupling, two-lug claw",
        "four lug claw, four-lug claw",
        "4 lugs, four-lug claw",
        "`claw, European`, European claw",
        "European universal claw coupling, European claw",
        "3/4-11.5 NH male, 3/4-11.5 NH male",
        "3/4 in garden hose female, 3/4-11.5 NH female swivel",
        "garden hose female fixed, 3/4-11.5 NH female fixed",
        "GHT male, 3/4-11.5 NH male",
        "3/4-8 NH male, 1-8 NH male",
        "1 NST male, 1-8 NH male",
        "3/4 fire hose male, 1-8 NH male",
        "1-1/2-9 NH female, 1-1/2-9 NH female swivel",
        "1/2 NPSM female swivel, 1/2 NPSM female swivel",
        "swivel 1/4 NPT male, 1/4 NPT male swivel"
      })
  void ends_with_a_form_are_read_as_people_write_them_and_labels_read_back(
      String typed, String label) {
    assertThat(End.parse(typed)).hasToString(label);
    assertThat(End.parse(label)).isEqualTo(End.parse(typed));
    assertThat(End.parse(label).label()).isEqualTo(label);
  }

  /** Every form on every thread it is made on, in every way to turn. */
  static List<End> everyForm() {
    List<End> ends = new ArrayList<>();
    for (Gender gender : Gender.values()) {
      List<NamedThread> threads = new ArrayList<>(ForeignThread.all(gender));
      ThreadFamily.BSPP
          .sizes()
          .forEach(size -> threads.add(new ThreadDesignation(ThreadFamily.BSPP, size, gender)));
      for (NamedThread thread : threads) {
        for (SealForm form : SealForm.values()) {
          if (FormRules.problem(thread, form).isEmpty()) {
            ends.add(new End.Formed(thread, form, false));
            ends.add(new End.Formed(thread, form, true));
          }
        }
      }
    }
    for (ClawHead head : ClawHead.values()) {
      ends.add(new End.Claw(head));
    }
    return ends;
  }

  @Test
  void every_end_with_a_form_is_read_back_from_its_label_without_a_remark() {
    List<End> ends = everyForm();
    assertThat(ends).hasSizeGreaterThan(400);
    for (End end : ends) {
      assertThat(End.parse(end.label())).as(end.label()).isEqualTo(end);
      assertThat(End.remarkOn(end.label())).as(end.label()).isEmpty();
      assertThat(end).hasToString(end.label());
    }
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "3/8 flare, `37° or 45° flare? They share threads and do not seal on each other: look at the cone. Tube of this"
            + " size has 9/16-18 at 37° flare, 5/8-18 at 45° flare`, 4",
        "7/16-20 flare male, `37° or 45° flare? They share threads and do not seal on each other: look at the cone`, 8",
        "3/8 cone male, `which cone: 24°, 37° or 45°?`, 4",
        "30° flare 9/16-18 male, `flares are of 37° or 45°, cones of tube fittings of 24°`, 0",
        "24° flare M14x1.5 male, `flares are of 37° or 45°, cones of tube fittings of 24°`, 0",
        "45° JIC 9/16-18 male, JIC is the flare of 37°, 0",
        "9/16-18 male, `the thread does not tell what seals: \"37° flare 9/16-18 male\" or \"9/16-18 male with O-ring\"?"
            + " Look at the part`, 12",
        "5/8-18 female, `the thread does not tell what seals: \"45° flare 5/8-18 female\" or \"inverted flare 5/8-18"
            + " female\"? Look at the part`, 13",
        "M14x1.5 male, `the thread does not tell what seals: \"24° cone M14x1.5 male\" or \"M14x1.5 male with O-ring\" or"
            + " \"M14x1.5 male with washer\" or \"M14x1.5 male with ring\"? Look at the part`, 12",
        "universal claw, `universal is said of heads that do not mate: two-lug or four-lug (North American), or European?"
            + " Write \"two-lug claw\", \"four-lug claw\" or \"European claw\"`, 0",
        "American claw, `there are heads that do not mate: two-lug or four-lug (North American), or European? Write"
            + " \"two-lug claw\", \"four-lug claw\" or \"European claw\"`, 9",
        "two-lug European claw, two heads of claw couplings at once, 17",
        "1-1/2 in two-lug claw, `two-lug heads end at 1 in; larger ones have four lugs`, 0",
        "3/4 NH male, `3/4 NH is a garden hose of 11.5 or a fire hose of 8 threads per inch: which of them? Both are for"
            + " water`, 4",
        "NH male, the size is missing, 7",
        "3/4-9 NH male, `no hose coupling for water of this size is known: 3/4-11.5 NH, 1-8 NH and 1-1/2-9 NH are`, 0",
        "1/2 garden hose male, `no hose coupling for water of this size is known: 3/4-11.5 NH, 1-8 NH and 1-1/2-9 NH"
            + " are`, 0",
        "3/4 garden hose, `a garden hose is for water: never put compressed air on it or its couplings, as the air stored"
            + " in it throws about what bursts or parts. To see what goes on it all the same, say male or female`, 15",
        "37° flare 9/16-18, male or female is missing, 17",
        "37° flare male, `the thread is missing, such as 9/16-18`, 14",
        "24° cone male, `the metric thread of the 24° cone is missing, such as M14x1.5`, 13",
        "45° flare 9/16-18 male, `thread of the form 45° flare must be one of 5/16-24, 3/8-24, 7/16-20, 1/2-20, 5/8-18,"
            + " 11/16-16, 3/4-16, 7/8-14, 1-1/16-14, 1-1/4-12, 1-3/8-12, was 9/16-18; 9/16-18 has 37° flare or"
            + " O-ring`, 0",
        "37° flare 9/16-20 male, `no unified thread of flares and ports has this size and these threads per inch`, 10",
        "-7 JIC male, `no 37° flare of this dash size is known; write its thread`, 1",
        "-7.5 JIC male, `no 37° flare of this dash size is known; write its thread`, 1",
        "45° flare 2 in tube male, `no 45° flare for a tube of this size is known; write its thread`, 10",
        "3/8 O-ring port, `a size without threads per inch does not tell the thread: write it, such as 9/16-18, or the"
            + " dash size, such as -6`, 0",
        "10 mm tube O-ring port, `a size without threads per inch does not tell the thread: write it, such as 9/16-18,"
            + " or the dash size, such as -6`, 0",
        "M10x1.25 O-ring port, `thread of the form O-ring must be one of 5/16-24, 3/8-24, 7/16-20, 1/2-20, 9/16-18,"
            + " 3/4-16, 7/8-14, 1-1/16-12, 1-3/16-12, 1-5/16-12, 1-5/8-12, 1-7/8-12, 2-1/2-12, M8x1, M10x1, M12x1.5,"
            + " M14x1.5, M16x1.5, M18x1.5, M20x1.5, M22x1.5, M27x2, M33x2, was M10x1.25; M10x1.25 has 24° cone or flat"
            + " face`, 0",
        "M15x1.5 port, no metric thread M15x1.5 is known to this library, 0",
        "M14x port, the pitch of the metric thread is missing, 3",
        "M14x1.5 M5 port, a second thread, 8",
        "1/4 NPT male with washer, 1/4 NPT male seals on the thread and has no washer or ring, 18",
        "G 1/4 male port, a port is female, 11",
        "M14x1.5 male port, male and female at once, 13",
        "9/16-18 male female O-ring, male and female at once, 13",
        "9/16-18 O-ring 5/8 port, a second size, 15",
        "9/16-18 bogus port, 'bogus' is not understood, 8",
        "two-lug bogus claw, 'bogus' is not understood, 8",
        "3/4 bogus garden hose male, 'bogus' is not understood, 4",
        "9/16-18 O-ring port?, '?' is not understood, 19",
        "1/4 NPT flare male, 'NPT' is not understood, 4"
      })
  void what_may_be_meant_in_two_ways_or_does_not_exist_is_refused_in_one_line(
      String typed, String problem, int position) {
    assertThatThrownBy(() -> End.parse(typed))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageStartingWith(
            "\"" + typed + "\": " + problem + ", at position " + position + "; accepted: ")
        .hasMessageNotContaining("\n");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "-6 flare male, `read as 37° flare, whose sizes are told by dash numbers; say 45° if that is meant: look at the"
            + " cone`",
        "9/16-18 flare male, `read as 37° flare, because no flare of the other angle has this thread: look at the cone`",
        "5/8-18 flare male, `read as 45° flare, because no flare of the other angle has this thread: look at the cone`",
        "M14x1.5 port, `read as port with O-ring (ISO 6149); write \"M14x1.5 flat-face port\" if it seals on a washer"
            + " (ISO 9974)`",
        "3/4 in two-lug claw, `the size was read over: it belongs to the other end of the part, heads of one kind are"
            + " alike`",
        "6 x 1 mm tube, `read as 6 mm tube with a wall of 1 mm, because it is less than half of the outside; write \"6"
            + " mm tube, bore 1 mm\" if the bore is meant`"
      })
  void what_is_read_in_one_of_two_ways_is_told(String typed, String remark) {
    assertThat(End.remarkOn(typed)).contains(remark);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "37° flare 9/16-18 male",
        "9/16-18 port",
        "M14x1.5 O-ring port",
        "two-lug claw",
        "6 x 4 mm tube",
        "M5 port"
      })
  void what_is_clear_is_not_remarked_on(String typed) {
    assertThat(End.remarkOn(typed)).isEmpty();
  }

  /** A reading of 1 in is the largest of the two-lug class (reference claw_couplings.csv). */
  @Test
  void a_two_lug_claw_is_read_up_to_1_in_and_a_size_in_millimetres_is_read_over() {
    assertThat(End.parse("1 in two-lug claw")).isEqualTo(new End.Claw(ClawHead.TWO_LUG));
    assertThat(End.parse("19 mm two-lug claw")).isEqualTo(new End.Claw(ClawHead.TWO_LUG));
    assertThat(End.parse("2 in four-lug claw")).isEqualTo(new End.Claw(ClawHead.FOUR_LUG));
  }

  private static final Map<String, String> COLUMNS = new LinkedHashMap<>(
      Map.of("flare_45_thread", "45° flare", "inverted_flare_thread", "inverted flare"));

  static Stream<Row> dashes() {
    return Rows.of(FormTest.class, "dash_threads.csv");
  }

  @ParameterizedTest(name = "dash {index}")
  @MethodSource("dashes")
  void a_dash_size_and_a_tube_give_the_thread_of_the_table(Row row) {
    String flare = "37° flare " + row.text("flare_37_thread") + " male";
    String port = row.text("oring_boss_thread") + " O-ring port";
    assertThat(End.parse("-" + row.text("dash") + " flare male")).hasToString(flare);
    assertThat(End.parse("37° flare " + row.text("tube_od_inch") + " in tube male"))
        .hasToString(flare);
    assertThat(End.parse("#" + row.text("dash") + " O-ring port")).hasToString(port);
    Optional<TubeThread> ours =
        TubeThread.ofDash(SealForm.FLARE_37, Integer.parseInt(row.text("dash")));
    assertThat(ours.orElseThrow().source().basis())
        .isEqualTo(row.text("flare_basis").equals("read") ? Basis.STANDARD : Basis.FROM_MEMORY);
  }

  static Stream<Row> flares() {
    return Rows.of(FormTest.class, "flare_45.csv");
  }

  @ParameterizedTest(name = "tube {index}")
  @MethodSource("flares")
  void a_tube_gives_the_thread_of_the_table_of_45_degree_and_inverted_flares(Row row) {
    COLUMNS.forEach((column, form) -> {
      if (!row.text(column).isEmpty()) {
        assertThat(End.parse(form + " " + row.text("tube_od_inch") + " in tube female")
                .label())
            .startsWith(form + " " + row.text(column) + " female");
      }
    });
  }

  @Test
  void the_tables_hold_no_row_beyond_those_of_the_reference() {
    long inverted =
        flares().filter(row -> !row.text("inverted_flare_thread").isEmpty()).count();
    assertThat(TubeThread.read())
        .hasSize((int) (2 * dashes().count() + flares().count() + inverted));
    assertThat(PortPassage.read()).hasSize((int) passages().count());
  }

  static Stream<Row> passages() {
    return Rows.of(FormTest.class, "port_iso1179.csv");
  }

  @ParameterizedTest(name = "port {index}")
  @MethodSource("passages")
  void a_g_port_passes_what_the_chart_says(Row row) {
    Length ours = PortPassage.of(row.text("thread")).orElseThrow().bore();
    Comparison.of(
            "Ends: passages of G ports",
            row.text("thread") + ", passage",
            row.number("passage_dia_mm"),
            "mm",
            row.evidence("passage_dia_mm"))
        .isMetBy(ours.millimetres(), row.halfDigit("passage_dia_mm"), "digits printed");
  }

  @Test
  void only_ports_whose_chart_was_read_tell_their_bore() {
    assertThat(End.parse("G 1/4 port").clearBore().orElseThrow())
        .hasToString("7.5 mm if drilled as the port chart says");
    assertThat(End.parse("G 3/8 port").clearBore()).isEmpty();
    assertThat(End.parse("G 1/4 male with washer").clearBore()).isEmpty();
    assertThat(End.parse("9/16-18 O-ring port").clearBore()).isEmpty();
    assertThat(End.parse("two-lug claw").clearBore()).isEmpty();
  }

  private static ForeignThread foreign(String name, Gender gender) {
    return ForeignThread.find(name, gender).orElseThrow();
  }

  @Test
  void a_form_is_refused_on_a_thread_or_gender_it_is_not_made_with() {
    ForeignThread male = foreign("5/8-18", Gender.MALE);
    assertThatThrownBy(() -> new End.Formed(male, SealForm.FLARE_37, false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "thread of the form 37° flare must be one of 5/16-24, 3/8-24, 7/16-20, 1/2-20, 9/16-18, 3/4-16,"
                + " 7/8-14, 1-1/16-12, 1-3/16-12, 1-5/16-12, 1-5/8-12, 1-7/8-12, 2-1/2-12, was 5/8-18");
    assertThatThrownBy(() -> new End.Formed(male, SealForm.WASHER, false))
        .hasMessage("thread of the form washer must be metric, G or 10-32, was 5/8-18");
    assertThatThrownBy(() -> new End.Formed(male, SealForm.CONE_24, false))
        .hasMessage("thread of the form 24° cone must be metric, was 5/8-18");
    assertThatThrownBy(() -> new End.Formed(male, SealForm.WATER, false))
        .hasMessage("thread of the form hose coupling for water must be a hose thread, was 5/8-18");
    assertThatThrownBy(() -> new End.Formed(foreign("M5", Gender.MALE), SealForm.FLAT_FACE, false))
        .hasMessage("gender of a thread in a flat face must be female, was male");
    assertThatThrownBy(() -> new End.Formed(foreign("M5", Gender.FEMALE), SealForm.RING, false))
        .hasMessage("gender of a thread with its own ring must be male, was female");
    NamedThread taper =
        new ThreadDesignation(ThreadFamily.NPT, NominalThreadSize.ONE_QUARTER, Gender.MALE);
    assertThatThrownBy(() -> new End.Formed(taper, SealForm.WASHER, false))
        .hasMessage("thread of the form washer must be metric, G or 10-32, was 1/4 NPT");
  }

  @SuppressWarnings("NullAway")
  @Test
  void nothing_is_made_from_null() {
    assertThatThrownBy(() -> new End.Formed(null, SealForm.O_RING, false)).hasMessage("thread");
    assertThatThrownBy(() -> new End.Formed(foreign("M5", Gender.MALE), null, false))
        .hasMessage("form");
  }

  @Test
  void the_nut_of_a_flare_is_female_and_of_an_inverted_flare_male() {
    for (SealForm form : SealForm.values()) {
      assertThat(form.isNut(Gender.MALE)).isEqualTo(form == SealForm.INVERTED_FLARE);
    }
    assertThat(SealForm.FLARE_37.isNut(Gender.FEMALE)).isTrue();
    assertThat(SealForm.FLARE_45.isNut(Gender.FEMALE)).isTrue();
    assertThat(SealForm.CONE_24.isNut(Gender.FEMALE)).isTrue();
    assertThat(SealForm.WATER.isNut(Gender.FEMALE)).isTrue();
    assertThat(SealForm.O_RING.isNut(Gender.FEMALE)).isFalse();
    assertThat(SealForm.INVERTED_FLARE.isNut(Gender.FEMALE)).isFalse();
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "`6 mm tube, wall 1 mm`, `6 mm tube, wall 1 mm`, 4 mm",
        "6 mm tube 1 mm wall, `6 mm tube, wall 1 mm`, 4 mm",
        "6 x 4 mm tube, `6 mm tube, wall 1 mm`, 4 mm",
        "6x4 mm tube, `6 mm tube, wall 1 mm`, 4 mm",
        "6 mm x 4 mm tube, `6 mm tube, wall 1 mm`, 4 mm",
        "6 mm OD x 4 mm ID tube, `6 mm tube, wall 1 mm`, 4 mm",
        "6×1 mm tube, `6 mm tube, wall 1 mm`, 4 mm",
        "6 mm OD x 1 mm ID tube, `6 mm tube, wall 2.5 mm`, 1 mm",
        "`6 mm tube, bore 1 mm`, `6 mm tube, wall 2.5 mm`, 1 mm",
        "8 x 4 mm tube, `8 mm tube, wall 2 mm`, 4 mm",
        "8 x 3.9 mm tube, `8 mm tube, wall 3.9 mm`, 0.2 mm",
        "12 x 9 mm tube, `12 mm tube, wall 1.5 mm`, 9 mm",
        "1/4 x 0.170 in tube, `1/4 in tube, wall 0.04 in`, 4.318 mm",
        "`3/8 in tube, wall 0.062 in`, `3/8 in tube, wall 0.062 in`, 6.375 mm",
        "3/8\" x 1/4\" tube, `3/8 in tube, wall 0.0625 in`, 6.35 mm"
      })
  void a_tube_is_told_with_its_wall_or_its_bore(String typed, String label, String bore) {
    End tube = End.parse(typed);
    assertThat(tube).hasToString(label);
    assertThat(End.parse(label)).isEqualTo(tube);
    assertThat(tube.clearBore().orElseThrow())
        .hasToString(bore + " by its outside and the wall that was told");
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "6 x 6 mm tube, the bore of a tube must be above 0 and below its outside diameter",
        "6 x 0 mm tube, the wall of a tube must be above 0 and below half of its outside diameter",
        "`6 mm tube, wall 3 mm`, the wall of a tube must be above 0 and below half of its outside diameter",
        "`6 mm tube, bore 6 mm`, the bore of a tube must be above 0 and below its outside diameter",
        "`6 mm tube, wall 1`, unit is missing",
        "0.5 x 0.4 mm tube, `the outside diameter of a tube must be in [1, 500] mm`"
      })
  void a_wall_or_bore_that_cannot_be_is_refused(String typed, String problem) {
    assertThatThrownBy(() -> End.parse(typed))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining(problem);
  }

  @Test
  void a_tube_made_by_hand_has_a_wall_below_half_of_its_outside() {
    Length outside = Length.ofMillimetres(6.0);
    assertThatThrownBy(() -> new End.TubeEnd(outside, Optional.of(Length.ofMillimetres(3.0))))
        .hasMessage(
            "wall of a tube must be above 0 and below half of its outside diameter of 6 mm, was 3 mm");
    assertThatThrownBy(() -> new End.TubeEnd(outside, Optional.of(Length.ofMillimetres(0.0))))
        .hasMessageEndingWith("was 0 mm");
    assertThat(new End.TubeEnd(outside, Optional.of(Length.ofMillimetres(2.9))))
        .hasToString("6 mm tube, wall 2.9 mm");
  }

  @ParameterizedTest
  @CsvSource({
    "push-in for 8 mm, 8 mm push-in",
    "push-in 1/4 in, 1/4 in push-in",
    "tube 5/16 in, 5/16 in tube",
    "barb 3/8 in, 3/8 in barb",
    "hose for 10 mm, 10 mm hose",
    "1/4 in OD tube, 1/4 in tube"
  })
  void the_word_may_stand_first(String typed, String label) {
    assertThat(End.parse(typed)).hasToString(label);
  }
}
