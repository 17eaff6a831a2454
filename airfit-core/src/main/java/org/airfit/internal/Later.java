package org.airfit.internal;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A value that is worked out when it is first asked for, by whichever thread: each that works it out finds the same. It
 * compares by the value, and must be immutable with final fields.
 *
 * @param <T> what it is
 */
public final class Later<T> {

  private final Supplier<? extends T> how;
  private @Nullable T found;

  private Later(Supplier<? extends T> how) {
    this.how = how;
  }

  /**
   * Puts a value off.
   *
   * @param <T> what it is
   * @param how works it out; finds the same each time
   * @return the value to come
   */
  public static <T> Later<T> of(Supplier<? extends T> how) {
    return new Later<>(how);
  }

  /** {@return the value, worked out now if it was not before} */
  public T get() {
    T value = found;
    if (value == null) {
      value = how.get();
      found = value;
    }
    return value;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Later<?> that && get().equals(that.get());
  }

  @Override
  public int hashCode() {
    return get().hashCode();
  }

  /** {@return the value as text} */
  @Override
  public String toString() {
    return get().toString();
  }
}
