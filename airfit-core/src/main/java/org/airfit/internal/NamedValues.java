package org.airfit.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What was told of a thing, value by value under names, and nothing for what was not told: for types with many
 * optional parts, so that each part is named once.
 *
 * <p>Immutable, and equal by value. {@link #with} returns a fuller one, so that a builder holds one of these and
 * nothing else.
 */
public final class NamedValues {

  /**
   * The name of a value, and what type it has.
   *
   * @param <T> the type of the value
   * @param text how the value is called, unique among the names used with it
   * @param untold the value where none was told, or null
   */
  public record Name<T>(String text, @Nullable T untold) {

    /**
     * Names a value for which nothing stands where it was not told.
     *
     * @param <T> the type of the value
     * @param text how the value is called
     * @return the name
     */
    public static <T> Name<T> of(String text) {
      return new Name<>(text, null);
    }

    /**
     * Names something that is so or is not; not, where it was not told.
     *
     * @param text how it is called
     * @return the name
     */
    public static Name<Boolean> flag(String text) {
      return new Name<>(text, Boolean.FALSE);
    }
  }

  /** Nothing told yet. */
  public static final NamedValues NONE = new NamedValues(new HashMap<>());

  private final Map<String, Object> values;

  private NamedValues(Map<String, Object> values) {
    this.values = values;
  }

  /**
   * Tells a value, in place of what was told under its name before.
   *
   * @param <T> the type of the value
   * @param name its name
   * @param value the value
   * @return these values with it
   * @throws NullPointerException if {@code value} is null, with the name
   */
  public <T> NamedValues with(Name<T> name, T value) {
    Objects.requireNonNull(value, name.text());
    Map<String, Object> fuller = new HashMap<>(values);
    if (value.equals(name.untold())) {
      fuller.remove(name.text()); // so that equality does not ask who told it
    } else {
      fuller.put(name.text(), value);
    }
    return new NamedValues(fuller);
  }

  /**
   * Tells that something is so.
   *
   * @param name its name
   * @return these values with it
   */
  public NamedValues with(Name<Boolean> name) {
    return with(name, Boolean.TRUE);
  }

  /**
   * Tells all that others tell, in place of what was told under the same names before.
   *
   * @param others the values that come on top
   * @return these values with the others
   */
  public NamedValues with(NamedValues others) {
    Map<String, Object> fuller = new HashMap<>(values);
    fuller.putAll(others.values);
    return new NamedValues(fuller);
  }

  /**
   * Obtains a value.
   *
   * @param <T> the type of the value
   * @param name its name
   * @return the value told, else that of the name, else null
   */
  @SuppressWarnings("unchecked") // only with() puts values in, each of the type of its name
  public <T> @Nullable T get(Name<T> name) {
    Object value = values.get(name.text());
    return value == null ? name.untold() : (T) value;
  }

  /**
   * Obtains a value that may not have been told.
   *
   * @param <T> the type of the value
   * @param name its name
   * @return the value told, else that of the name, else empty
   */
  public <T> Optional<T> find(Name<T> name) {
    return Optional.ofNullable(get(name));
  }

  /**
   * Tells whether something is so.
   *
   * @param name its name
   * @return whether it was told
   */
  public boolean is(Name<Boolean> name) {
    return Boolean.TRUE.equals(get(name));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof NamedValues that && values.equals(that.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  /** {@return the values by name, such as "{place=outdoors, reach=10.0 m}"} */
  @Override
  public String toString() {
    return new TreeMap<>(values).toString();
  }
}
