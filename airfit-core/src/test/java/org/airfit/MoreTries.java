package org.airfit;

import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * Tries each property as many times more as -Dairfit.tries says: a build has minutes for them, and a night has hours.
 * The services of the test resources make it known to jqwik.
 */
public final class MoreTries implements AroundPropertyHook {

  private static final int TIMES = Integer.getInteger("airfit.tries", 1);

  @Override
  public PropertyExecutionResult aroundProperty(
      PropertyLifecycleContext context, PropertyExecutor property) {
    context
        .attributes()
        .tries()
        .ifPresent(tries -> context.attributes().setTries(Math.multiplyExact(tries, TIMES)));
    return property.execute();
  }

  @Override
  public PropagationMode propagateTo() {
    return PropagationMode.ALL_DESCENDANTS;
  }
}
