package org.airfit.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.airfit.air.AirState;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the searches answer where something else than the pressure wanted sets the limit. */
class LineSearchEndsTest {

  private static final LossModel MODEL = LossModels.isothermal();
  private static final double BAR = 8.0e5;
  private static final AirState AIR =
      AirState.of(AbsolutePressure.ofPascals(BAR), Temperature.ofCelsius(20.0));

  private static Conduit smooth(double millimetres, double metres) {
    return Conduit.of(
        Length.ofMillimetres(millimetres), Length.ofMetres(metres), Length.ofMetres(0.0));
  }

  private static MassFlow kg(double kilogramsPerSecond) {
    return MassFlow.ofKilogramsPerSecond(kilogramsPerSecond);
  }

  private static AbsolutePressure pascals(double pascals) {
    return AbsolutePressure.ofPascals(pascals);
  }

  private static double drop(LossModel model, Conduit conduit, double flow) {
    return model
        .loss(conduit, kg(flow), AIR)
        .fold(flowing -> flowing.drop().pascals(), choked -> Double.POSITIVE_INFINITY);
  }

  @Test
  void no_bore_is_wider_than_ten_metres() {
    AbsolutePressure wanted = pascals(7.0e5);
    Conduit widest = smooth(10_000.0, 1_000.0);
    double most = MODEL.flowFor(widest, AIR, wanted).massFlow().kilogramsPerSecond();
    assertThat(MODEL.boreFor(smooth(1.0, 1_000.0), kg(most * 1.000001), AIR, wanted))
        .isEmpty();
    LineSolution found =
        MODEL.boreFor(smooth(1.0, 1_000.0), kg(most * 0.999999), AIR, wanted).orElseThrow();
    assertThat(found.conduit().bore().metres()).isCloseTo(10.0, within(1.0e-4)).isLessThan(10.0);
    assertThat(found.isLimitedByChoking()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 1.0e-18, 1.0e-15})
  void no_bore_is_narrower_than_a_hundredth_of_a_millimetre(double flow) {
    LineSolution found =
        MODEL.boreFor(smooth(5.0, 1.0), kg(flow), AIR, pascals(7.0e5)).orElseThrow();
    assertThat(found.conduit().bore().millimetres()).isCloseTo(0.01, within(1.0e-14));
    assertThat(found.isLimitedByChoking()).isFalse();
    assertThat(found.loss().outlet().pressure().pascals()).isGreaterThan(7.0e5);
  }

  /** By Hagen and Poiseuille 1e-15 kg/s lose 128 μ ṁ/(π D⁴ ρ) per metre, in 10 mm 7.7e-12 Pa: of 10¹² m under 10 Pa. */
  @Test
  void no_line_is_longer_than_a_million_million_metres() {
    LineSolution found =
        MODEL.lengthFor(smooth(10.0, 1.0), kg(1.0e-15), AIR, pascals(7.9e5)).orElseThrow();
    assertThat(found.conduit().length().metres()).isCloseTo(1.0e12, within(1.0e-2));
    assertThat(found.loss().drop().pascals()).isBetween(0.1, 10.0);
    assertThat(found.isLimitedByChoking()).isFalse();
  }

  @Test
  void where_no_pressure_may_be_lost_a_line_without_length_and_fittings_does() {
    LineSolution found =
        MODEL.lengthFor(smooth(10.0, 1.0), kg(0.01), AIR, AIR.pressure()).orElseThrow();
    assertThat(found.conduit().length().metres()).isZero();
    assertThat(found.loss().drop().pascals()).isZero();
  }

  /**
   * By hand: ρ v²/2 of 0.02 kg/s in 10 mm is ṁ²/(2 ρ A²) = 3411 Pa, so that friction of 0.02 takes 6.8 Pa for each
   * millimetre: a ten millionth of a pascal is less than a nanometre, a pascal is some 0.15 mm.
   */
  @Test
  void what_fittings_leave_is_the_length_or_none_below_a_nanometre() {
    Conduit fitted = smooth(10.0, 0.0).withFittings(5.0);
    double without = drop(MODEL, fitted, 0.02);
    LineSolution none =
        MODEL.lengthFor(fitted, kg(0.02), AIR, pascals(BAR - without - 1.0e-9)).orElseThrow();
    assertThat(none.conduit().length().metres()).isZero();
    assertThat(none.isLimitedByChoking()).isFalse();
    LineSolution some =
        MODEL.lengthFor(fitted, kg(0.02), AIR, pascals(BAR - without - 1.0)).orElseThrow();
    assertThat(some.conduit().length().millimetres()).isBetween(0.1, 0.2);
    assertThat(MODEL.lengthFor(fitted, kg(0.02), AIR, pascals(BAR - without + 1.0)))
        .isEmpty();
  }

  /** Friction jumps at Re 2300 from 64/2300 to 0.047: what is wanted in between leaves the jump as the limit. */
  @Test
  void a_jump_of_friction_is_a_limit_but_not_one_of_choking() {
    Conduit hose = smooth(10.0, 20.0);
    double jump = MODEL.element(hose).nextJump(0.0, AIR.viscosity().pascalSeconds());
    double laminar = drop(MODEL, hose, Math.nextDown(jump));
    double turbulent = drop(MODEL, hose, jump);
    assertThat(turbulent).isGreaterThan(1.5 * laminar);
    AbsolutePressure wanted = pascals(BAR - 0.5 * (laminar + turbulent));
    LineSolution flow = MODEL.flowFor(hose, AIR, wanted);
    assertThat(flow.massFlow().kilogramsPerSecond())
        .isLessThan(jump)
        .isCloseTo(jump, within(1.0e-12 * jump));
    assertThat(flow.isLimitedByChoking()).isFalse();
    LineSolution bore = MODEL.boreFor(hose, kg(jump), AIR, wanted).orElseThrow();
    assertThat(bore.conduit().bore().millimetres()).isCloseTo(10.0, within(1.0e-11));
    assertThat(bore.loss().drop().pascals()).isCloseTo(laminar, within(1.0e-9 * laminar));
    assertThat(bore.isLimitedByChoking()).isFalse();
  }

  /** A thousandth above the pressure at choking the pressure is met, a thousandth below choking comes first. */
  @ParameterizedTest
  @EnumSource(
      value = PipeEquation.class,
      names = {"ISOTHERMAL", "ADIABATIC"})
  void choking_is_told_from_a_pressure_just_above_it(PipeEquation equation) {
    LossModel model = LossModels.of(equation, FrictionLaw.COLEBROOK);
    Conduit hose = smooth(10.0, 5.0).withFittings(2.0);
    LineLoss.Choked choked = (LineLoss.Choked) model.loss(hose, kg(10.0), AIR);
    double at = choked.chokingPressure().pascals();
    double most = choked.largest().kilogramsPerSecond();
    for (double near : new double[] {1.0e-3, -1.0e-3}) {
      AbsolutePressure wanted = pascals(at * (1.0 + near));
      LineSolution flow = model.flowFor(hose, AIR, wanted);
      LineSolution bore = model.boreFor(hose, kg(most), AIR, wanted).orElseThrow();
      LineSolution length = model.lengthFor(hose, kg(most), AIR, wanted).orElseThrow();
      for (LineSolution found : List.of(flow, bore, length)) {
        assertThat(found.isLimitedByChoking()).as("%s %s", found, near).isEqualTo(near < 0.0);
        assertThat(found.loss().outlet().pressure().pascals())
            .isGreaterThan(wanted.pascals() * (1.0 - 1.0e-9));
      }
      assertThat(flow.massFlow().kilogramsPerSecond()).isCloseTo(most, within(1.0e-5 * most));
      assertThat(bore.conduit().bore().millimetres()).isCloseTo(10.0, within(1.0e-4));
      assertThat(length.conduit().length().metres()).isCloseTo(5.0, within(1.0e-4));
    }
  }

  /** Without friction nothing is lost up to the flow of a = 1, ṁ = A p1/√(R T), and nothing more passes. */
  @Test
  void a_stub_passes_what_its_bore_does() {
    Conduit stub = smooth(10.0, 0.0);
    double nozzle = stub.area().squareMetres() * BAR / Math.sqrt(287.05287 * 293.15);
    LineSolution flow = MODEL.flowFor(stub, AIR, pascals(1.0e5));
    assertThat(flow.massFlow().kilogramsPerSecond()).isCloseTo(nozzle, within(1.0e-7 * nozzle));
    assertThat(flow.isLimitedByChoking()).isTrue();
    LineSolution bore = MODEL.boreFor(stub, kg(nozzle), AIR, pascals(1.0e5)).orElseThrow();
    assertThat(bore.conduit().bore().millimetres()).isCloseTo(10.0, within(1.0e-6));
    assertThat(bore.isLimitedByChoking()).isTrue();
  }

  /** Nothing limits such a line in a model that does not know choking; what is calculated with ends at 10⁹⁰ kg/s. */
  @Test
  void where_nothing_is_lost_all_passes() {
    LineSolution found = LineFormula.HARRIS.flowFor(smooth(10.0, 0.0), AIR, pascals(7.0e5));
    assertThat(found.massFlow().kilogramsPerSecond()).isCloseTo(1.0e90, within(1.0e77));
    assertThat(found.isLimitedByChoking()).isFalse();
    assertThat(LineFormula.HARRIS
            .flowFor(smooth(10.0, 0.0), AIR, AIR.pressure())
            .massFlow()
            .kilogramsPerSecond())
        .isZero();
  }

  /** A line that passes what its bore lets through: it knows the largest flow a little too high, as searches do. */
  private record Nozzle(double tooHigh, AtomicInteger asked) implements LossModel {
    @Override
    public LineLoss loss(Conduit conduit, MassFlow massFlow, AirState inlet) {
      asked.incrementAndGet();
      return massFlow.kilogramsPerSecond() > 1.0
          ? LineLoss.choked(
              this,
              conduit,
              massFlow,
              inlet,
              kg(Math.min(massFlow.kilogramsPerSecond(), 1.0 + tooHigh)),
              pascals(0.5 * inlet.pressure().pascals()))
          : LineLoss.flowing(
              this,
              conduit,
              massFlow,
              inlet,
              inlet.at(pascals(inlet.pressure().pascals()
                  * (1.0 - 0.5 * Math.pow(massFlow.kilogramsPerSecond(), 2.0)))),
              PressureDrop.ofPascals(
                  0.5 * inlet.pressure().pascals() * Math.pow(massFlow.kilogramsPerSecond(), 2.0)),
              Optional.empty(),
              List.of());
    }

    @Override
    public Working working(LineLoss loss, UnitSystem units) {
      throw new UnsupportedOperationException();
    }

    @Override
    public String title() {
      return "nozzle";
    }

    @Override
    public String validity() {
      return "a test";
    }

    @Override
    public String fitBasis() {
      return "none";
    }

    @Override
    public String bias() {
      return "none";
    }

    @Override
    public Source source() {
      return Source.demo("test");
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 5.0e-16, 1.0e-14, 1.0e-11})
  void a_largest_flow_that_is_a_little_too_high_is_brought_down_until_it_passes(double tooHigh) {
    Nozzle nozzle = new Nozzle(tooHigh, new AtomicInteger());
    LineSolution found = nozzle.flowFor(smooth(10.0, 1.0), AIR, pascals(1.0e5));
    assertThat(found.isLimitedByChoking()).isTrue();
    assertThat(found.massFlow().kilogramsPerSecond())
        .isLessThanOrEqualTo(1.0)
        .isCloseTo(1.0, within(1.0e-15 + 8.0 * tooHigh));
    assertThat(nozzle.asked.get()).isLessThan(20);
  }

  /** Δp = p1 ṁ²/2: by hand 0.6 kg/s lose 0.18 of 8 bar. Where half is lost it chokes. */
  @Test
  void a_model_of_ones_own_is_searched_as_well() {
    Nozzle nozzle = new Nozzle(0.0, new AtomicInteger());
    LineSolution found = nozzle.flowFor(smooth(10.0, 1.0), AIR, pascals(0.82 * BAR));
    assertThat(found.massFlow().kilogramsPerSecond()).isCloseTo(0.6, within(1.0e-12));
    assertThat(found.isLimitedByChoking()).isFalse();
    assertThat(nozzle
            .flowFor(smooth(10.0, 1.0), AIR, pascals(0.5 * BAR))
            .massFlow()
            .kilogramsPerSecond())
        .isCloseTo(1.0, within(1.0e-12));
  }
}
