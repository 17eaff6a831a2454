package org.airfit;

import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * Tries each property as many times more as -Dairfit.tries says: a build has minutes for them, a night has hours, and
 * each of thousands of mutants has a part of a second (-Dairfit.tries=0.2). A night draws anew each time; a build draws
 * the same, so that what fails in it comes from what was changed.
 * The services of the test resources make it known to jqwik.
 */
public final class MoreTries implements AroundPropertyHook {

  private static final double TIMES = Double.parseDouble(System.getProperty("airfit.tries", "1"));

  /** Whether there is time for all of what a build tries a part of. */
  public static boolean isNight() {
    return TIMES > 1;
  }

  @Override
  public PropertyExecutionResult aroundProperty(
      PropertyLifecycleContext context, PropertyExecutor property) {
    context
        .attributes()
        .tries()
        .ifPresent(tries ->
            context.attributes().setTries((int) Math.max(1, Math.round(tries * TIMES))));
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
