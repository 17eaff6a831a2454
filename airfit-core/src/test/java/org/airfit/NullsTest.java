package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every public constructor and every public static method refuses {@code null} with a {@link NullPointerException} that
 * names the parameter.
 *
 * <p>Each is called with good arguments, which {@link Samples} makes, and then with one of them replaced by null.
 */
class NullsTest {

  /** Doors whose good arguments must fit each other in ways that no sample shows. They are not tried here. */
  private static final Set<String> UNTRIED = Set.of(
      "joint.End$Formed",
      "joint.Tube.of",
      "line.LineLoss.choked",
      "line.LineLoss.flowing",
      "line.LineLoss.still",
      "line.LossComparison.of",
      "line.PipeFitting.of",
      "network.DayChange.largerReceiver",
      "network.DayChange.movedBands",
      "network.DayChange.regulatedHeader",
      "network.DemandTimes$Span",
      "network.DemandTimes.repeated",
      "plant.Compressor",
      "plant.LeakLedger$Explained",
      "plant.LeakSize.ofBag",
      "plant.LeakTest$Falling",
      "plant.LeakTest.of",
      "plant.ReceiverUse",
      "plant.RegulatorCurve",
      "plug.Effort",
      "plug.Outlier",
      "plug.PlugReading.overBall",
      "plug.SocketAnswer.alone",
      "quantity.FrictionFactor.parse",
      "quantity.Range.parse",
      "quantity.ValveCoefficient.parse",
      "run.GaugeTest.of",
      "run.LongestHose.ofEverySize",
      "run.RankedChange.rank",
      "run.WiderHose.tried",
      "run.WiderHose.triedFromNarrowest",
      "safety.SafetyRules.ofRows",
      "safety.SafetyRules.ofTable",
      "select.BillOfMaterials.of",
      "select.CouplingInventory",
      "select.Interview.of",
      "select.JobFindings.of",
      "select.JobCoverage.of",
      "select.JobMix$Job",
      "select.PriceList",
      "select.Offers.of",
      "select.Part$Regulator",
      "select.Part$Splitter",
      "select.Requirement.forTools",
      "select.RunNow.of",
      "select.Selection.of",
      "select.Slot$Hose",
      "select.Slot.hose",
      "select.ToolLine.toSplitter",
      "working.ChartAxis.even",
      "working.ChartAxis.logarithmic",
      "working.PencilChart.of",
      "working.Formula.of",
      "working.Formula.solvedFor");

  private static Stream<Executable> doors() {
    return PublicTypes.all().stream()
        .flatMap(type -> Stream.concat(
            Stream.<Executable>of(type.getConstructors()),
            Stream.<Executable>of(type.getMethods())
                .filter(method -> method.getDeclaringClass() == type)
                .filter(method -> Modifier.isStatic(method.getModifiers()))
                .filter(method -> !type.isEnum() || !isOfEveryEnum(method))))
        .filter(door -> !Modifier.isAbstract(door.getDeclaringClass().getModifiers())
            || Modifier.isStatic(door.getModifiers()))
        .filter(door -> Stream.of(door.getParameterTypes()).anyMatch(type -> !type.isPrimitive()))
        // what takes a type that is not public is called by its own package only
        .filter(door -> Stream.of(door.getParameterTypes())
            .allMatch(type ->
                type.isPrimitive() || type.isArray() || Modifier.isPublic(type.getModifiers())));
  }

  private static boolean isOfEveryEnum(Executable method) {
    return method.getName().equals("valueOf") || method.getName().equals("values");
  }

  @Test
  void every_public_constructor_and_factory_names_the_argument_that_is_null() {
    TreeSet<String> wrong = new TreeSet<>();
    TreeSet<String> untried = new TreeSet<>();
    doors().forEach(door -> {
      Object[] arguments = Samples.arguments(door);
      if (arguments == null) {
        untried.add(name(door));
        return;
      }
      for (int i = 0; i < arguments.length; i++) {
        if (!door.getParameterTypes()[i].isPrimitive()) {
          Object[] lacking = arguments.clone();
          lacking[i] = null;
          String answer = answer(door, lacking, door.getParameters()[i]);
          if (!answer.isEmpty()) {
            wrong.add(
                door.toGenericString() + ": " + door.getParameters()[i].getName() + " " + answer);
          }
        }
      }
    });
    assertThat(wrong).isEmpty();
    // where a door is added that no sample opens, add a sample
    assertThat(untried).as("no good arguments were found").isSubsetOf(UNTRIED);
  }

  private static String name(Executable door) {
    String type = door.getDeclaringClass().getName().replace("org.airfit.", "");
    return door.getName().contains(".") ? type : type + "." + door.getName();
  }

  private static String answer(Executable door, Object[] arguments, Parameter parameter) {
    try {
      Samples.call(door, arguments);
      return "is taken";
    } catch (InvocationTargetException e) {
      Throwable cause = e.getCause();
      boolean names = cause instanceof NullPointerException
          && cause.getMessage() != null
          && cause.getMessage().contains(parameter.getName());
      return names ? "" : "gives " + cause;
    } catch (ReflectiveOperationException e) {
      throw new LinkageError("a public door cannot be called", e);
    }
  }
}
