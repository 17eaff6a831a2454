package org.airfit.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What nobody knows is a question, and of a range of pressures the worse end is judged. */
class NotKnownTest {

  private static final String HEADING =
      "jurisdiction,citation,text,quantity,operator,limit,unit,asks,when,unless,source,basis\n";

  private static SafetyRule rule(String judged) {
    return SafetyRules.ofTable(HEADING + "Works,rule 1,as told," + judged + ",board,read\n")
        .rules()
        .get(0);
  }

  private static Ruling judge(String judged, Situation.Builder situation) {
    return Ruling.of(rule(judged), situation.build());
  }

  private static Situation.Builder line(double lowest, double highest) {
    return Situation.describe()
        .linePressure(GaugePressure.ofBar(lowest), GaugePressure.ofBar(highest));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "quick couplers",
        "tool on hose",
        "percussion tool",
        "whip hose",
        "automatic feed",
        "cleaning",
        "forms or mill scale",
        "air on clothing",
        "blasting",
        "painting",
        "lubricated line",
        "plastic pipe",
        "hoisted by hose",
        "maintenance",
        "mine",
        "military construction"
      })
  void a_fact_that_nobody_knows_is_asked_for_and_one_that_is_not_told_is_not(String fact) {
    Situation.Builder open = Situation.describe().notKnown(fact);
    assertThat(judge(",,,,forbids," + fact + ",", open).judgement()).isEqualTo(Judgement.DEPENDS);
    assertThat(judge(",,,,forbids," + fact + ",", open).reason())
        .startsWith("ask whether ")
        .endsWith(".")
        .doesNotContain("..", ";");
    assertThat(judge(",,,,forbids," + fact + ",", Situation.describe()).judgement())
        .isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(judge(",,,,forbids,," + fact, open).judgement()).isEqualTo(Judgement.DEPENDS);
    assertThat(judge(",,,,forbids,," + fact, Situation.describe()).judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
  }

  @Test
  void what_is_met_whether_it_applies_or_not_is_not_asked() {
    String rule = "line pressure,<=,7,bar,forbids,mine,";
    assertThat(judge(rule, line(5.0, 7.0).notKnown("mine")))
        .hasToString("rule 1: allowed. 7 bar(g) against at most 7 bar(g).");
    assertThat(judge(rule, line(5.0, 7.1).notKnown("mine")))
        .hasToString(
            "rule 1: depends. Ask whether the line is in a mine; 7.1 bar(g) against at most 7 bar(g).");
    assertThat(judge(rule, line(5.0, 7.1)))
        .hasToString("rule 1: does not apply. No mine was named.");
  }

  @Test
  void what_is_told_decides_before_what_is_not_known() {
    Situation.Builder told = Situation.describe().notKnown("lubricated line").painting();
    assertThat(judge(",,,,forbids,painting; lubricated line,", told))
        .hasToString("rule 1: depends. Ask whether the line is lubricated; the air sprays paint.");
    assertThat(judge(",,,,forbids,blasting; lubricated line,", told).judgement())
        .isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(judge(",,,,forbids,lubricated line,painting", told).judgement())
        .isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(judge(",,,,forbids,painting; lubricated line,", told.lubricatedLine())
            .judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
  }

  @Test
  void two_questions_are_asked_together() {
    assertThat(judge(
            ",,,,forbids,mine,maintenance",
            Situation.describe().notKnown("mine").notKnown("maintenance")))
        .hasToString(
            "rule 1: depends. Ask whether the line is in a mine, and whether somebody works"
                + " on the line or the machine.");
  }

  /** Worst is the highest where the rule allows what lies below its limit, and the lowest where above. */
  @ParameterizedTest
  @CsvSource({
    "line pressure, <=, forbids, 4.9, 7.0, ALLOWED",
    "line pressure, <=, forbids, 4.9, 7.1, NOT_ALLOWED",
    "line pressure, <, forbids, 4.9, 7.0, NOT_ALLOWED",
    "line pressure, >=, forbids, 7.0, 9.0, ALLOWED",
    "line pressure, >=, forbids, 6.9, 9.0, NOT_ALLOWED",
    "line pressure, >, forbids, 7.0, 9.0, NOT_ALLOWED",
    "line pressure, >, requires, 6.0, 7.1, REQUIRED",
    "line pressure, >, requires, 6.0, 7.0, NOT_REQUIRED",
    "line pressure, <, requires, 6.9, 9.0, REQUIRED",
    "line pressure, <, requires, 7.0, 9.0, NOT_REQUIRED",
    "coupler pressure, <=, forbids, 4.9, 7.1, NOT_ALLOWED",
    "coupler pressure, >=, forbids, 6.9, 9.0, NOT_ALLOWED",
    "automatic feed pressure, <=, forbids, 4.9, 7.1, NOT_ALLOWED",
    "automatic feed pressure, >=, forbids, 6.9, 9.0, NOT_ALLOWED",
    "automatic feed pressure, >=, forbids, 7.0, 9.0, ALLOWED",
    "cleaning pressure, >=, forbids, 6.9, 9.0, ALLOWED",
  })
  void the_worse_end_of_the_range_is_judged(
      String quantity, String operator, String asks, double lowest, double highest, Judgement is) {
    GaugePressure most = GaugePressure.ofBar(highest);
    Situation.Builder situation =
        line(lowest, highest).couplerPressure(most).automaticFeed(most).cleaning(most);
    assertThat(judge(quantity + "," + operator + ",7,bar," + asks + ",,", situation)
            .judgement())
        .isEqualTo(is);
  }

  @Test
  void a_rating_that_nobody_knows_is_asked_for() {
    String share = "share of lowest rating,<=,80,percent of the rating,forbids,,";
    assertThat(judge(share, line(5.0, 8.0).notKnown("lowest rating")))
        .hasToString("rule 1: depends. Ask for the lowest rating.");
    assertThat(judge(share, line(5.0, 8.0)).judgement()).isEqualTo(Judgement.DOES_NOT_APPLY);
    assertThat(judge(
                share,
                line(5.0, 8.0)
                    .notKnown("lowest rating")
                    .ratedParts(GaugePressure.ofBar(8.0), GaugePressure.ofBar(10.0)))
            .judgement())
        .as("8 bar are 80 % of 10 bar")
        .isEqualTo(Judgement.ALLOWED);
    String receiver = "share of receiver rating,<=,100,percent of the rating,forbids,,";
    assertThat(judge(receiver, Situation.describe().notKnown("receiver rating")))
        .hasToString("rule 1: depends. Ask for the receiver rating.");
    assertThat(judge("hose bore,<=,0.5,in,forbids,,", Situation.describe()).judgement())
        .isEqualTo(Judgement.DOES_NOT_APPLY);
  }

  /** A limit on clothing or in a mine presumes that air is blown on clothing, that it is a mine. */
  @Test
  void what_a_quantity_presumes_is_asked_for_where_it_would_be_broken() {
    String clothing = "pressure on clothing,<=,10,psi,forbids,,";
    assertThat(judge(clothing, Situation.describe().perhapsClothing(GaugePressure.ofPsi(10.0))))
        .hasToString("rule 1: allowed. 10 psig against at most 10 psig.");
    assertThat(judge(clothing, Situation.describe().perhapsClothing(GaugePressure.ofPsi(11.0))))
        .hasToString("rule 1: depends. Ask whether air is blown on clothing that is worn; 11 psig"
            + " against at most 10 psig.");
    assertThat(judge(clothing, Situation.describe().clothing(GaugePressure.ofPsi(11.0)))
            .judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
    String mine = "mine hose bore,<,1,in,forbids,mine,";
    assertThat(judge(mine, Situation.describe().perhapsHoseInMine(Length.ofInches(1.0))))
        .hasToString(
            "rule 1: depends. Ask whether the line is in a mine; 1 in against less than 1 in.");
    assertThat(judge(mine, Situation.describe().perhapsHoseInMine(Length.ofInches(0.9)))
            .judgement())
        .isEqualTo(Judgement.ALLOWED);
    assertThat(
            judge(mine, Situation.describe().hoseInMine(Length.ofInches(1.0))).judgement())
        .isEqualTo(Judgement.NOT_ALLOWED);
  }

  @Test
  void a_question_calls_for_no_caution() {
    Ruling open = judge(",,,,forbids,mine,", Situation.describe().notKnown("mine"));
    assertThat(open.caution()).isEmpty();
    assertThat(Judgement.DEPENDS.callsForCaution()).isFalse();
  }

  @Test
  void what_no_rule_can_ask_for_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Situation.describe().notKnown("weather"))
        .withMessageContaining("quick couplers, tool on hose, percussion tool")
        .withMessageContaining("lowest rating, receiver rating")
        .withMessageEndingWith("was \"weather\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> line(7.0, 6.9))
        .withMessage("highest line pressure must be at least 101.5 psig, was 100.1 psig");
    assertThat(judge("line pressure,<=,7,bar,forbids,,", line(7.0, 7.0)).judgement())
        .isEqualTo(Judgement.ALLOWED);
  }

  @Test
  void a_rule_tells_whether_it_forbids_and_what_it_waits_for() {
    SafetyRule forbids = rule(",,,,forbids,painting; lubricated line,mine");
    assertThat(forbids.isForbidding()).isTrue();
    assertThat(forbids.waitsFor()).isEqualTo(List.of("painting", "lubricated line"));
    assertThat(forbids.excepts()).isEqualTo(List.of("mine"));
    assertThat(rule("line pressure,>,7,bar,,,").isForbidding()).isFalse();
    assertThat(rule("line pressure,<,7,bar,,,").isForbidding()).isTrue();
    SafetyRule unjudged = SafetyRules.bundled().rules().stream()
        .filter(rule -> !rule.isJudged())
        .findFirst()
        .orElseThrow();
    assertThat(unjudged.isForbidding()).isFalse();
    assertThat(unjudged.waitsFor()).isEmpty();
    assertThat(unjudged.excepts()).isEmpty();
  }

  /** Each reason behind "Here:" is part of one sentence. */
  @Test
  void reasons_of_rules_of_one_title_make_one_sentence() {
    SafetyRules rules = SafetyRules.ofTable("""
        jurisdiction,citation,text,title,asks,when,quantity,operator,limit,unit,source,basis
        Works,one,first,Both,requires,percussion tool,,,,,board,read
        Works,two,second,Both,requires,painting,,,,,board,read
        Works,three,third,Both,requires,,line pressure,>,0.5,bar,board,read
        """);
    assertThat(rules
            .cautions(line(1.0, 8.0).impactTool().painting().build())
            .get(0)
            .text())
        .isEqualTo("First. Here: the tool is a percussion tool; the air sprays paint; 8 bar(g) in"
            + " the line, asked for above 0.5 bar(g).");
  }
}
