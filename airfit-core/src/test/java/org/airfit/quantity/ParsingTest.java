package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What people type, and what they are told when it cannot be read. */
class ParsingTest {

  private final Locale before = Locale.getDefault();

  @AfterEach
  void restore_the_locale() {
    Locale.setDefault(before);
  }

  private static QuantityFormatException refusal(Function<String, ?> parse, String text) {
    try {
      throw new AssertionError("\"" + text + "\" was read as " + parse.apply(text));
    } catch (QuantityFormatException refused) {
      assertThat(refused.text()).isEqualTo(text);
      assertThat(refused.accepted()).isNotBlank();
      assertThat(refused).hasMessageContaining("; accepted: " + refused.accepted());
      assertThat(refused).hasMessageContaining(", at position " + refused.position());
      return refused;
    }
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "3/8 in, 9.525",
        "⅜ in, 9.525",
        "3⁄8\", 9.525",
        "3/8″, 9.525",
        "1-1/4\", 31.75",
        "1 1/4 in, 31.75",
        "1¼ in, 31.75",
        "1 - 1/4 inch, 31.75",
        "1-¼\", 31.75",
        "12.7 mm, 12.7",
        "12.7mm, 12.7",
        "  12.7  mm  , 12.7",
        "+.5 in, 12.7",
        "5. mm, 5",
        "1.27e1 mm, 12.7",
        "12.7 MM, 12.7",
        "12.7 millimetres, 12.7",
        "1 ft, 304.8",
        "1', 304.8",
        "10 thou, 0.254",
        "254 um, 0.254",
        "254 μm, 0.254",
        "1/2“, 12.7",
        "1/2”, 12.7",
        "1/2„, 12.7",
        "1/2＂, 12.7",
        "1/2’’, 12.7",
        "1‘, 304.8",
        "1´, 304.8",
        "1∕2 in, 12.7",
        "1–1/4 in, 31.75",
        "1‑1/4 in, 31.75",
        "0 mm, 0",
        "0/8 in, 0",
        "0e9 mm, 0"
      })
  void lengths(String text, double millimetres) {
    assertThat(Length.parse(text)).isEqualTo(Length.ofMillimetres(millimetres));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "90 psig",
        "90psig",
        "90 PSIG",
        "90 Psig",
        "90 psi g",
        "90 psi(g)",
        "90 psi gauge",
        "90 psi gage",
        "90.0 psig",
        "90 lbf/in² g",
        "90 lb/in2(g)",
        "90\u00a0psig",
        "9e1 psi[g]"
      })
  void ninety_psig_however_it_is_typed(String text) {
    assertThat(GaugePressure.parse(text)).isEqualTo(GaugePressure.ofPsi(90));
  }

  /** Blanks that pages and word processors put between a number and its unit, those without a width among them. */
  @ParameterizedTest
  @ValueSource(
      ints = {
        0x09, 0x20, 0xa0, 0x1680, 0x2002, 0x2003, 0x2007, 0x2009, 0x200a, 0x200b, 0x200e, 0x2028,
        0x202f, 0x205f, 0x2060, 0x3000, 0xfeff
      })
  void a_blank_is_a_blank_whatever_its_width(int blank) {
    String b = Character.toString(blank);
    assertThat(GaugePressure.parse(b + "90" + b + "psi" + b + "g" + b))
        .isEqualTo(GaugePressure.ofPsi(90));
    assertThat(Length.parse("1" + b + "1/4" + b + "in")).isEqualTo(Length.ofInches(1.25));
    assertThat(HoseBore.parse("10" + b + "mm" + b + "ID").label()).isEqualTo("10 mm");
    assertThat(Money.parse(b + "5" + b + "USD" + b)).isEqualTo(Money.parse("5 USD"));
  }

  @Test
  void pressures_of_the_three_kinds() {
    assertThat(GaugePressure.parse("6.2 bar(g)")).isEqualTo(GaugePressure.ofBar(6.2));
    assertThat(GaugePressure.parse("6.2 barg")).isEqualTo(GaugePressure.ofBar(6.2));
    assertThat(GaugePressure.parse("-5 psig")).isEqualTo(GaugePressure.ofPsi(-5));
    assertThat(GaugePressure.parse("−5 psig")).isEqualTo(GaugePressure.ofPsi(-5));
    assertThat(GaugePressure.parse("0.62 MPa(g)")).isEqualTo(GaugePressure.ofKilopascals(620));
    assertThat(AbsolutePressure.parse("7.2 bar(a)")).isEqualTo(AbsolutePressure.ofBar(7.2));
    assertThat(AbsolutePressure.parse("700 kPa abs"))
        .isEqualTo(AbsolutePressure.ofKilopascals(700));
    assertThat(AbsolutePressure.parse("104.7 psia")).isEqualTo(AbsolutePressure.ofPsi(104.7));
    assertThat(PressureDrop.parse("5 psi")).isEqualTo(PressureDrop.ofPsi(5));
    assertThat(PressureDrop.parse("5 psid")).isEqualTo(PressureDrop.ofPsi(5));
    assertThat(PressureDrop.parse("2 inH2O").in(PressureUnit.INCH_OF_WATER)).isEqualTo(2);
    assertThat(PressureDrop.parse("2\"WC").in(PressureUnit.INCH_OF_WATER)).isEqualTo(2);
  }

  /** The mark must be there: 90 psi may be either. */
  @ParameterizedTest
  @CsvSource({
    "90 psi, psig, psia",
    "6.2 bar, bar(g), bar(a)",
    "620 kPa, kPa(g), kPa(a)",
    "90 psid, psig, psia"
  })
  void a_bare_unit_is_neither_gauge_nor_absolute(String text, String gauge, String absolute) {
    String reason = "does not tell from where the pressure counts: say " + gauge
        + " for a gauge reading or " + absolute + " for an absolute one";
    assertThat(refusal(GaugePressure::parse, text)).hasMessageContaining(reason);
    assertThat(refusal(AbsolutePressure::parse, text)).hasMessageContaining(reason);
    assertThat(refusal(GaugePressure::parse, text).position()).isEqualTo(text.indexOf(' ') + 1);
  }

  @Test
  void a_pressure_marked_as_another_kind_is_told_the_way() {
    assertThat(refusal(AbsolutePressure::parse, "90 psig"))
        .hasMessageContaining("\"psig\" is a gauge reading: add the atmosphere to it and say psia");
    assertThat(refusal(GaugePressure::parse, "104.7 psia"))
        .hasMessageContaining(
            "\"psia\" is an absolute pressure: take the atmosphere off and say psig");
    assertThat(refusal(PressureDrop::parse, "5 psig"))
        .hasMessageContaining("\"psig\" marks a pressure against the atmosphere; a drop between"
            + " two places has no such mark: say psi");
    assertThat(refusal(PressureDrop::parse, "5 bar(a)"))
        .hasMessageContaining("against the vacuum")
        .hasMessageContaining("say bar");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"20 °C", "20C", "20 degC", "20 degrees C", "20 celsius", "20 º C", "20 ℃", "20 c"})
  void twenty_degrees(String text) {
    assertThat(Temperature.parse(text)).isEqualTo(Temperature.ofCelsius(20));
  }

  @Test
  void other_quantities() {
    assertThat(Temperature.parse("68 F")).isEqualTo(Temperature.ofCelsius(20));
    assertThat(Temperature.parse("-40 °F")).isEqualTo(Temperature.ofCelsius(-40));
    assertThat(Volume.parse("60 US gal")).isEqualTo(Volume.ofUsGallons(60));
    assertThat(SonicConductance.parse("3.5 dm3/(s bar)"))
        .isEqualTo(SonicConductance.parse("3.5 L/s/bar"))
        .isEqualTo(SonicConductance.parse("210 L/(min·bar)"));
    assertThat(DynamicViscosity.parse("18 µPa·s")).isEqualTo(DynamicViscosity.parse("1.8e-5 Pa s"));
    assertThat(Power.parse("10 hp")).isEqualTo(Power.ofHorsepower(10));
    assertThat(Energy.parse("1200 kWh")).isEqualTo(Energy.ofKilowattHours(1200));
    assertThat(Area.parse("71 mm2")).isEqualTo(Area.ofSquareMillimetres(71));
    assertThat(Density.parse("0.075 lb/ft3")).isEqualTo(Density.ofPoundsPerCubicFoot(0.075));
    assertThat(Velocity.parse("15 m/s")).isEqualTo(Velocity.ofMetresPerSecond(15));
    assertThat(MassFlow.parse("8 g/s")).isEqualTo(MassFlow.ofGramsPerSecond(8));
  }

  /** Text, place and reason. The place is where the text stops making sense. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      delimiter = '|',
      value = {
        "6,2 mm | 1 | a comma means different things in different places: write 6.2 with a point",
        "1,200 mm | 1 | and 1200 without a mark",
        "1 200 mm | 2 | a second number: write 1200 without a gap",
        "mm | 0 | this is no number",
        "`` | 0 | the number is missing",
        "`   ` | 3 | the number is missing",
        "12.7 | 4 | the unit is missing",
        "NaN mm | 0 | this is no number",
        "Infinity mm | 0 | this is no number",
        "0x1p3 mm | 1 | \"x1p3 mm\" is no unit of length",
        "12.7 furlongs | 5 | \"furlongs\" is no unit of length",
        "12.7 mm long | 8 | \"long\" does not belong here",
        "12.7 psig | 5 | \"psig\" is a unit of gauge pressure, not of length",
        "12.7 bar | 5 | \"bar\" is a unit of pressure, not of length",
        "12.7 scfm | 5 | \"scfm\" is a unit of free-air flow, not of length",
        "12.7 Mm | 5 | \"Mm\" is no unit of length",
        "3/0 in | 2 | a fraction cannot be over zero",
        "-1 mm | 0 | length must be finite and at least 0 mm, was -1.0 mm",
        "1e999 mm | 0 | length must be finite and at least 0 mm, was Infinity mm",
        "1e-999 mm | 0 | this number is too small to hold",
        "12.7 (mm | 5 | this bracket has no partner",
        "12.7 mm) | 7 | this bracket has no partner",
        "12.7 ((mm)) | 6 | this bracket has no partner",
        "5'6\" | 1 | \"'6\"\" is no unit of length",
        "twelve mm | 0 | this is no number"
      })
  void what_cannot_be_read_is_told_where_and_why(String text, int position, String reason) {
    QuantityFormatException refused = refusal(Length::parse, text);
    assertThat(refused).hasMessageContaining(reason);
    assertThat(refused.position()).isEqualTo(position);
    assertThat(refused.accepted()).contains("m, mm, cm").contains("such as \"12.7 mm\"");
  }

  @Test
  void what_physics_refuses_keeps_its_reason_as_the_cause() {
    assertThat(refusal(Temperature::parse, "-300 °C"))
        .hasMessageContaining("temperature must be finite and at least -273.15 °C, was -300.0 °C")
        .hasCauseInstanceOf(IllegalArgumentException.class);
    assertThat(refusal(AbsolutePressure::parse, "-1 psia")).hasMessageContaining("at least 0 psia");
  }

  @Test
  void a_milli_is_not_a_mega() {
    assertThat(refusal(GaugePressure::parse, "0.62 mPa(g)")).hasMessageContaining("mPa(g)");
    assertThat(GaugePressure.parse("0.62 MPA(G)")).isEqualTo(GaugePressure.ofKilopascals(620));
    assertThat(GaugePressure.parse("0.62 mpa(g)")).isEqualTo(GaugePressure.ofKilopascals(620));
  }

  @Test
  void a_gallon_is_two_units() {
    assertThat(refusal(Volume::parse, "60 gal"))
        .hasMessageContaining(
            "\"gal\" tells neither the US nor the imperial gallon: say US gal or imp gal");
  }

  @Test
  void a_message_stays_one_short_line() {
    QuantityFormatException refused = refusal(Length::parse, "12\nmm" + "x".repeat(500));
    assertThat(refused.getMessage()).doesNotContain("\n").contains("…\": ");
    assertThat(refused.text()).hasSize(505);
  }

  /** Somebody pastes a book: no more of it is looked at than a quantity may have. */
  @ParameterizedTest
  @ValueSource(strings = {" x", "1 ", "x", "  ", "1", "1-", "1/", ".", "(", " at "})
  void a_pasted_book_is_refused_by_its_beginning(String piece) {
    for (Function<String, ?> parse : List.<Function<String, ?>>of(
        Length::parse,
        FreeAirFlow::parse,
        ReferenceState::parse,
        HoseBore::parse,
        NominalThreadSize::parse,
        Money::parse,
        text -> DecimalMark.COMMA.read(text, Length::parse))) {
      for (String front : List.of("", "12 mm ", "5 L/s ")) {
        QuantityFormatException refused = refusal(parse, front + piece.repeat(100_000) + "!");
        assertThat(refused.getMessage()).hasSizeLessThan(700);
        assertThat(refused.position()).as("far in front of its end").isLessThan(1000);
      }
    }
  }

  @Test
  void two_hundred_characters_are_read_and_no_more() {
    assertThat(Length.parse("12.7" + " ".repeat(194) + "mm")).isEqualTo(Length.ofMillimetres(12.7));
    QuantityFormatException refused = refusal(Length::parse, "12.7" + " ".repeat(195) + "mm");
    assertThat(refused).hasMessageContaining("this text is longer than 200 characters");
    assertThat(refused.position()).isEqualTo(200);
  }

  @ParameterizedTest
  @ValueSource(strings = {"tr-TR", "ar-EG", "de-DE", "hi-IN-u-nu-deva", "ar-EG-u-nu-arab"})
  void the_locale_of_the_machine_changes_nothing(String tag) {
    Locale.setDefault(Locale.forLanguageTag(tag));
    assertThat(Length.parse("12.7 MILLIMETRES")).isEqualTo(Length.ofMillimetres(12.7));
    assertThat(Length.parse("3 INCHES")).isEqualTo(Length.ofInches(3));
    assertThat(GaugePressure.parse("90 PSIG")).isEqualTo(GaugePressure.ofPsi(90));
    assertThat(FreeAirFlow.parse("16 L/MIN ANR").reference()).isEqualTo(ReferenceState.ANR);
    assertThat(FreeAirFlow.parse("16 l/s iso 1217").reference())
        .isEqualTo(ReferenceState.COMPRESSOR_INLET);
    assertThat(HoseBore.parse("3/8 IN ID").label()).isEqualTo("3/8 IN");
    assertThat(NominalThreadSize.parse("3/8 INCH")).isEqualTo(NominalThreadSize.THREE_EIGHTHS);
    assertThat(Length.ofMillimetres(1234.5678).format(LengthUnit.MILLIMETRE, 3))
        .isEqualTo("1234.568 mm");
    assertThat(Length.ofMillimetres(1234.5678).format(LengthUnit.METRE)).isEqualTo("1.235 m");
    assertThat(Length.ofMillimetres(12.5)).hasToString("0.0125 m");
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> Length.parse("6,2 mm"));
    assertThat(ReferenceState.ANR).hasToString("ANR (20 °C, 100 kPa(a), 65 % humidity)");
  }
}
