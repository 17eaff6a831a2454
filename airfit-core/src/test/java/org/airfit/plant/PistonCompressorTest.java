package org.airfit.plant;

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
import org.airfit.working.Completeness;
import org.airfit.working.Worked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class PistonCompressorTest {

  private static final String CHAPTER = "Plant: compressors at a height";
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
   * The table does not tell the clearance. Ours is the middle of what piston compressors have, 3 to 15 % (from
   * memory), and the tolerance what those bounds make of it. The rows ask for different
   * clearances: 4 % at 2000 ft, 10 % at 8000 ft in one stage, so this says no more than that the law has the right
   * size.
   */
  @ParameterizedTest
  @MethodSource("rows")
  void what_is_delivered_at_a_height_is_that_of_the_army_table(Row row) {
    String type = row.text("compressor_type");
    if (type.equals("rotary")) {
      // leaking back is left out, so that the model can only promise more than the table
      assertThat(percent(1, 0.0, row))
          .as(row.toString())
          .isGreaterThanOrEqualTo(row.number("efficiency_pct"));
      return;
    }
    int stages = type.startsWith("two") ? 2 : 1;
    double most = percent(stages, 0.03, row);
    double least = percent(stages, 0.15, row);
    Comparison.of(
            CHAPTER,
            row.toString(),
            row.number("efficiency_pct"),
            "%",
            row.evidence("efficiency_pct"))
        .isMetBy(
            0.5 * (most + least),
            0.5 * (most - least) + row.halfDigit("efficiency_pct"),
            "the clearance is not printed: 3 to 15 %, from memory");
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
    Worked there = units -> one.working(Length.ofMetres(2000.0), seven, units);
    Pencil.check(there);
    Completeness.check(there);
  }

  /**
   * With a clearance of 15 % nothing new comes in once the air left expands over the whole stroke: r = (1 + 1/0.15)^1.4
   * = 17.3.
   */
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
  void the_ends_of_the_ranges_are_accepted() {
    assertThat(new PistonCompressor(1, 0.0).stages()).isEqualTo(1);
    assertThat(new PistonCompressor(10, 0.5).clearance()).isEqualTo(0.5);
    assertThat(PistonCompressor.atmosphereAt(SEA).pascals()).isEqualTo(101_325.0);
    // 22 632 Pa in ISO 2533, from memory
    assertThat(PistonCompressor.atmosphereAt(Length.ofMetres(11_000.0)).pascals())
        .isCloseTo(22_632.0, within(2.0e-4 * 22_632.0));
    AbsolutePressure two = AbsolutePressure.ofBar(2.0);
    assertThat(new PistonCompressor(1, 0.08).volumetricEfficiency(two, two)).isEqualTo(1.0);
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
