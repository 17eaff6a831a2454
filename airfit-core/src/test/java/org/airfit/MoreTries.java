package org.airfit;

import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * Tries each property so many times its tries as -Dairfit.tries says: a build has minutes for them (0.4), a night has
 * hours, and each of thousands of mutants has a part of a second (0.2). A night draws anew each time; a build draws the
 * same, so that what fails in it comes from what was changed.
 * The services of the test resources make it known to jqwik; MoreTriesProperties notices where they do not.
 */
public final class MoreTries implements AroundPropertyHook {

  private static final double TIMES = Double.parseDouble(System.getProperty("airfit.tries", "0.4"));

  /** Whether there is time for all of what a build tries a part of. */
  public static boolean isNight() {
    return TIMES > 1;
  }

  /** How many times a property is tried whose tries are so many. */
  static int of(int tries) {
    return (int) Math.max(1, Math.round(tries * TIMES));
  }

  @Override
  public PropertyExecutionResult aroundProperty(
      PropertyLifecycleContext context, PropertyExecutor property) {
    context.attributes().tries().ifPresent(tries -> context.attributes().setTries(of(tries)));
    if (!isNight() && context.attributes().seed().isEmpty()) {
      String name =
          context.containerClass().getName() + "." + context.targetMethod().getName();
      context.attributes().setSeed(String.valueOf(name.hashCode()));
    }
    return property.execute();
  }

  @Override
  public PropagationMode propagateTo() {
    return PropagationMode.ALL_DESCENDANTS;
  }
}
