package org.airfit.flow;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.quantity.BasicBodySize;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.ReferenceState;
import org.airfit.quantity.VolumeFlowUnit;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Which basic body size of quick coupler a flow asks for, as the trade says it.
 *
 * <pre>
 *   1/4 up to 40 scfm,  3/8 up to 60 scfm,  1/2 from 60 scfm on
 * </pre>
 *
 * <p>Exactly 60 scfm belongs to 3/8 and to 1/2, and the answer holds both. scfm is counted at 60 °F and 14.7 psi
 * absolute. Common practice, no source: a rule to begin with. What a coupler costs in pressure comes from its {@link
 * FlowCapacity}, never from its class or its thread: two plugs of one profile with a 1/8 and a 3/8 thread carry the
 * same flow.
 *
 * @param flow the flow the tool takes
 * @param sizes the body sizes that answer it, smallest first: one, or two on a bound that belongs to both
 */
public record BodySizeAdvice(FreeAirFlow flow, List<BasicBodySize> sizes) implements Worked {

  /** What the bounds rest on. */
  public static final Source SOURCE =
      Source.commonPractice("body size by flow: up to 40, up to 60, 60 scfm and above");

  private static final double QUARTER_UP_TO = 40.0;
  private static final double HALF_FROM = 60.0;

  private static final Caution NOT_PRESSURE = new Caution(
      "Flow is not pressure",
      "A larger coupler does not push more air into a tool than the tool takes at its pressure. Over-pressure "
          + "damages tools, under-flow starves"
          + " them: set the pressure at the tool, and give the air room.",
      Source.commonPractice("over-pressure damages tools, under-flow starves them"));

  /**
   * Checks that the sizes answer the flow; {@link #of} finds them.
   *
   * @param flow the flow the tool takes
   * @param sizes the body sizes that answer it
   * @throws IllegalArgumentException if they are not those of the rule
   */
  public BodySizeAdvice {
    Objects.requireNonNull(flow, "flow");
    sizes = List.copyOf(Objects.requireNonNull(sizes, "sizes"));
    if (!sizes.equals(answering(flow))) {
      throw new IllegalArgumentException("body sizes for " + flow.shown() + " must be "
          + answering(flow) + ", were " + sizes + "; ask BodySizeAdvice.of(flow)");
    }
  }

  /**
   * Asks for the body size of a flow.
   *
   * @param flow the flow the tool takes, at any reference state
   * @return the size, or the two sizes that share the bound
   */
  public static BodySizeAdvice of(FreeAirFlow flow) {
    return new BodySizeAdvice(flow, answering(flow));
  }

  private static List<BasicBodySize> answering(FreeAirFlow flow) {
    double scfm = flow.at(ReferenceState.SCFM_60F).cubicFeetPerMinute();
    // a flow typed as 60 scfm is 60 scfm, though cubic metres rounded it
    double rounding = 1.0e-12 * scfm;
    if (scfm <= QUARTER_UP_TO + rounding) {
      return List.of(BasicBodySize.ONE_QUARTER);
    }
    if (Math.abs(scfm - HALF_FROM) <= rounding) {
      return List.of(BasicBodySize.THREE_EIGHTHS, BasicBodySize.ONE_HALF);
    }
    return List.of(scfm < HALF_FROM ? BasicBodySize.THREE_EIGHTHS : BasicBodySize.ONE_HALF);
  }

  /** {@return whether two sizes answer it} */
  public boolean isOnBound() {
    return sizes.size() > 1;
  }

  /** {@return the warnings that go with it} */
  public List<Caution> cautions() {
    return List.of(NOT_PRESSURE);
  }

  @Override
  public Working working(UnitSystem units) {
    double scfm = flow.at(ReferenceState.SCFM_60F).cubicFeetPerMinute();
    return Working.titled(
            "Basic body size for " + flow.format(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE), units)
        .note("At 60 °F and 14.7 psi that is " + Digits.significant(scfm, 4)
            + " scfm. The trade counts in scfm: 1/4 up to 40, 3/8 up to 60, 1/2 from 60 on.")
        .answer(inWords())
        .build();
  }

  /** {@return the advice in words} */
  public String inWords() {
    String names = sizes.stream().map(BasicBodySize::label).collect(Collectors.joining(" or "));
    String asked = flow.format(VolumeFlowUnit.CUBIC_FOOT_PER_MINUTE);
    return isOnBound()
        ? asked + ": body size " + names
            + "; exactly 60 scfm belongs to both, so ask what pressure either leaves at the tool ["
            + SOURCE + "]"
        : asked + ": body size " + names + " [" + SOURCE + "]";
  }
}
