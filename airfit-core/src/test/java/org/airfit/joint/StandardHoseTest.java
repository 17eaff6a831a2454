package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.ThreadTables;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.source.Basis;
import org.airfit.thread.Limits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hose bores of ISO 1307. */
class StandardHoseTest {

  static Stream<Row> bores() {
    return Rows.of(StandardHoseTest.class, "hose_bore_iso1307.csv");
  }

  private static StandardHose hose(String bore) {
    return StandardHose.of(HoseBore.parse(bore)).orElseThrow();
  }

  @ParameterizedTest(name = "{0} mm")
  @MethodSource("bores")
  void limits_agree_with_the_published_table(Row row) {
    StandardHose hose = hose(row.text("nominal_size_iso1307") + " mm");
    for (StandardHose.Type type : StandardHose.Type.values()) {
      String column = "type_" + type.name().toLowerCase(Locale.ROOT) + "_id_";
      assertThat(hose.bore(type).isPresent()).isEqualTo(row.has(column + "min_mm"));
      hose.bore(type).ifPresent(limits -> {
        same(row, column + "min_mm", limits.least().millimetres());
        same(row, column + "max_mm", limits.most().millimetres());
      });
    }
    Limits a = hose.bore(StandardHose.Type.A).orElseThrow();
    same(
        row, "type_a_spread_pow5", Math.pow(a.most().millimetres() / a.least().millimetres(), 5.0));
    if (row.has("trade_inch")) {
      HoseBore trade = hose.tradeName().orElseThrow();
      same(row, "inch_exact_mm", trade.nominal().millimetres());
      assertThat(a.contains(trade.nominal()))
          .isEqualTo(row.text("inch_inside_type_a").equals("yes"));
      assertThat(hose(trade.label())).isSameAs(hose);
    }
    assertThat(hose.source().basis()).isEqualTo(Basis.STANDARD);
  }

  private static void same(Row row, String column, double ours) {
    ThreadTables.compare(
        "Hose: ISO 1307", row, column, ours, row.halfDigit(column), "digits printed");
  }

  /** The table read anew: 20 mm without an inch name, 51 mm without limits of type B. */
  @Test
  void each_row_is_read_with_what_it_has_and_without_what_it_lacks() {
    List<StandardHose> read = StandardHose.read();
    StandardHose ten = read.get(3);
    assertThat(ten.nominal()).isEqualTo(HoseBore.parse("10 mm"));
    assertThat(ten.tradeName()).contains(HoseBore.parse("3/8 in"));
    assertThat(ten.bore(StandardHose.Type.B))
        .contains(new Limits(Length.ofMillimetres(9.3), Length.ofMillimetres(10.1)));
    assertThat(ten.source().basis()).isEqualTo(Basis.STANDARD);
    StandardHose twenty = read.get(7);
    assertThat(twenty.tradeName()).isEmpty();
    StandardHose last = read.get(9);
    assertThat(last.bore(StandardHose.Type.B)).isEmpty();
    assertThat(last.bore(StandardHose.Type.C))
        .contains(new Limits(Length.ofMillimetres(49.1), Length.ofMillimetres(52.6)));
    assertThat(read)
        .extracting(StandardHose::toString)
        .isEqualTo(StandardHose.all().stream().map(StandardHose::toString).toList());
  }

  @Test
  void a_hose_of_unknown_make_may_have_any_bore_of_the_types() {
    assertThat(hose("3/8 in").anyBore())
        .isEqualTo(new Limits(Length.ofMillimetres(8.7), Length.ofMillimetres(10.3)));
    assertThat(hose("2 in").anyBore().most().millimetres()).isEqualTo(52.6);
    // type A reaches further up than C
    assertThat(hose("4 mm").anyBore().most().millimetres()).isEqualTo(4.8);
  }

  @Test
  void a_bore_without_a_name_in_the_standard_gets_the_nearest_offered() {
    HoseBore eleven = HoseBore.of(Length.ofMillimetres(11.0));
    assertThat(StandardHose.of(eleven)).isEmpty();
    assertThat(StandardHose.nearest(eleven)).isSameAs(hose("10 mm"));
    assertThat(StandardHose.nearest(HoseBore.of(Length.ofMillimetres(300.0))))
        .isSameAs(hose("51 mm"));
  }

  @Test
  void hoses_tell_what_they_are() {
    assertThat(hose("10 mm")).hasToString("10 mm (3/8 in) hose, bore 8.700 to 10.300 mm");
    assertThat(hose("20 mm")).hasToString("20 mm hose, bore 19.300 to 20.900 mm");
    assertThat(StandardHose.all()).hasSize(10);
    assertThat(hose("20 mm").tradeName()).isEmpty();
    assertThat(hose("20 mm").nominal().nominal().millimetres()).isCloseTo(20.0, within(1e-12));
  }
}
