package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowCoefficients;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.run.Run;

/** Whatever the values are that are not known, what was answered holds. */
class RangesProperties {

  /** What computing rounds off a pressure of ten bar, and more [Pa]. */
  private static final double ROUNDING = 1.0e-3;

  private final Random random = new Random();

  private double between(double one, double other) {
    return one + random.nextDouble() * (other - one);
  }

  private FlowCapacity within(CapacityRange range) {
    FlowCoefficients least = range.least().figures();
    FlowCoefficients most = range.most().figures();
    return FlowCapacity.of(new FlowCoefficients(
        SonicConductance.ofCubicMetresPerSecondPascal(between(
            least.conductance().cubicMetresPerSecondPascal(),
            most.conductance().cubicMetresPerSecondPascal())),
        between(least.criticalPressureRatio(), most.criticalPressureRatio()),
        least.subsonicIndex(),
        least.crackingPressure()));
  }

  private Conduit within(ConduitRange range) {
    return Conduit.of(
            Length.ofMetres(
                between(range.least().bore().metres(), range.most().bore().metres())),
            Length.ofMetres(
                between(range.least().length().metres(), range.most().length().metres())),
            Length.ofMetres(between(
                range.least().roughness().metres(), range.most().roughness().metres())))
        .withFittings(between(range.least().fittingLoss(), range.most().fittingLoss()));
  }

  /** What arrives with some values of all that is not known [Pa above atmosphere], -1 for nothing. */
  private double arriving(Proposal p) {
    Requirement job = p.requirement();
    Range<GaugePressure> supplySet = job.settingRange();
    Run run = p.assembly()
        .runFrom(job.toOutletSetTo(
            supplySet.isExact()
                ? supplySet.most()
                : GaugePressure.ofPascals(
                    between(supplySet.least().pascals(), supplySet.most().pascals()))));
    List<String> names = run.names();
    int element = 0;
    for (Requirement.Piping pipe : job.pipes()) {
      run = run.replacing(names.get(element++), within(pipe.conduit()));
    }
    for (Placed placed : p.assembly().slotParts()) {
      Part part = placed.part();
      if (part instanceof Part.Hose hose) {
        run = run.replacing(names.get(element), within(hose.conduitRange()));
      } else if (part instanceof Part.Socket socket) {
        run = run.replacing(names.get(element), within(socket.capacityRange()));
      } else if (part instanceof Part.Device device) {
        run = run.replacing(names.get(element), within(device.capacityRange()));
      } else if (part instanceof Part.Regulator regulator) {
        Range<GaugePressure> set = placed.position().setting().orElseThrow();
        run = run.replacing(
            names.get(element),
            regulator.element(
                within(regulator.capacityRange()),
                PressureDrop.ofPascals(between(
                    regulator.droopRange().least().pascals(),
                    regulator.droopRange().most().pascals())),
                GaugePressure.ofPascals(
                    between(set.least().pascals(), set.most().pascals())),
                run.atmosphere()));
      }
      element += part instanceof Part.Plug ? 0 : 1;
    }
    return run.at(FreeAirFlow.ofAnrLitresPerSecond(1000.0
            * between(
                job.demandRange().least().cubicMetresPerSecond(),
                job.demandRange().most().cubicMetresPerSecond())))
        .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
  }

  /** Of a regulator that may be set higher or lower, and of pipes that may be longer or shorter, too. */
  @Property(tries = 60)
  void what_is_answered_holds_whatever_the_values_are(@ForAll long seed) {
    random.setSeed(seed);
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    Requirement job = random.nextInt(3) == 0 ? jumble.job().build() : jumble.jobOfAnyLayout();
    List<Proposal> listed = Selection.of(job, catalogue)
        .fold(fitting -> fitting.proposals(), nothing -> nothing.closest());
    for (Proposal p : listed) {
      double worst = Shelf.pascalsAtTool(p);
      double best = p.resultAtBest()
          .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
      RuleOutcome outcome = p.findings().stream()
          .filter(finding -> finding.rule() == Rule.AIR_AT_TOOL)
          .findFirst()
          .orElseThrow()
          .outcome();
      for (int i = 0; i < 5; i++) {
        double arriving = arriving(p);
        assertThat(arriving).isBetween(worst - ROUNDING, best + ROUNDING);
        if (outcome == RuleOutcome.MET) {
          assertThat(arriving).isGreaterThanOrEqualTo(job.least().pascals() - ROUNDING);
        } else if (outcome == RuleOutcome.UNMET) {
          assertThat(arriving).isLessThan(job.leastRange().least().pascals() + ROUNDING);
        }
      }
      // without a missing adapter, or a length that is lacking, nothing is met
      boolean isWhole = p.joints().stream().allMatch(Joint::isSound)
          && p.unmet().stream().noneMatch(each -> each.rule() == Rule.HOSE_REACHES);
      if (isWhole) {
        assertThat(p.doubts().isEmpty()).isEqualTo(outcome != RuleOutcome.OPEN);
      } else {
        assertThat(outcome).isNotEqualTo(RuleOutcome.MET);
      }
    }
  }
}
