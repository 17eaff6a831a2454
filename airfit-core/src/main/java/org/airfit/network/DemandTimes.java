package org.airfit.network;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Digits;
import org.airfit.internal.Seconds;

/**
 * When in a day a user takes its air, and which part of its flow.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class DemandTimes {

  /** No day is longer: seven of them. */
  static final Duration LONGEST = Duration.ofDays(7);

  /** A demand of more spans than this is refused; a recording of 7 days at 5 s has fewer. */
  private static final int MOST_SPANS = 200_000;

  private final List<Span> spans;
  private final Optional<Duration> averagedOver;

  private DemandTimes(List<Span> spans, Optional<Duration> averagedOver) {
    List<Span> sorted = new ArrayList<>(spans);
    sorted.sort(Comparator.comparing(Span::from));
    if (sorted.size() > MOST_SPANS) {
      throw new IllegalArgumentException("spans of a demand must be at most " + MOST_SPANS
          + ", was " + sorted.size() + "; record at longer intervals");
    }
    for (int i = 1; i < sorted.size(); i++) {
      if (sorted.get(i).from.compareTo(sorted.get(i - 1).to) < 0) {
        throw new IllegalArgumentException("spans of a demand must not overlap, was one from "
            + Seconds.told(sorted.get(i).from) + " while another lasts to "
            + Seconds.told(sorted.get(i - 1).to) + "; make two users of them");
      }
    }
    this.spans = List.copyOf(sorted);
    this.averagedOver = averagedOver;
  }

  /**
   * A time in which air is taken.
   *
   * @param from when it begins, counted from the beginning of the day
   * @param to when it ends, above {@code from} and at most 7 days
   * @param load the part of the flow that is taken [-], in [0, 1]
   */
  public record Span(Duration from, Duration to, double load) {

    /**
     * Checks the components.
     *
     * @param from when it begins, counted from the beginning of the day
     * @param to when it ends, above {@code from} and at most 7 days
     * @param load the part of the flow that is taken [-], in [0, 1]
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Span {
      Objects.requireNonNull(from, "from");
      Objects.requireNonNull(to, "to");
      if (from.isNegative() || to.compareTo(from) <= 0 || to.compareTo(LONGEST) > 0) {
        throw new IllegalArgumentException(
            "a demand must begin at 0 s or later, end after that, and"
                + " within 604800 s, was from " + Seconds.told(from) + " to " + Seconds.told(to));
      }
      if (!(load >= 0.0 && load <= 1.0)) {
        throw new IllegalArgumentException(
            "load of a demand must be in [0, 1], was " + Digits.told(load));
      }
    }
  }

  /** {@return the times of what never stops, such as a leak} */
  public static DemandTimes always() {
    return new DemandTimes(List.of(new Span(Duration.ZERO, LONGEST, 1.0)), Optional.empty());
  }

  /**
   * Obtains single times.
   *
   * @param spans the times, which do not overlap
   * @return the times
   * @throws IllegalArgumentException if two overlap
   */
  public static DemandTimes of(List<Span> spans) {
    return new DemandTimes(List.copyOf(Objects.requireNonNull(spans, "spans")), Optional.empty());
  }

  /**
   * Obtains a draw that comes again and again.
   *
   * @param first when the first begins
   * @param lasting how long each lasts
   * @param every the time from the beginning of one to that of the next, longer than {@code lasting}
   * @param until when none begins any more, at most 7 days
   * @return the times
   * @throws IllegalArgumentException if an argument is out of range, or no draw begins
   */
  public static DemandTimes repeated(
      Duration first, Duration lasting, Duration every, Duration until) {
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(lasting, "lasting");
    Objects.requireNonNull(every, "every");
    Objects.requireNonNull(until, "until");
    if (lasting.isNegative() || lasting.isZero() || every.compareTo(lasting) <= 0) {
      throw new IllegalArgumentException(
          "a draw must last more than 0 s and less than the time from" + " draw to draw, was "
              + Seconds.told(lasting) + " every " + Seconds.told(every));
    }
    if (first.isNegative() || until.compareTo(first) <= 0 || until.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException(
          "draws must begin at 0 s or later and end after that, within" + " 604800 s, was from "
              + Seconds.told(first) + " until " + Seconds.told(until));
    }
    double count = Math.ceil(Seconds.of(until.minus(first)) / Seconds.of(every));
    if (!(count <= MOST_SPANS)) {
      throw new IllegalArgumentException("draws of a day must be at most " + MOST_SPANS + ", was "
          + Digits.told(count) + "; check the times");
    }
    List<Span> spans = new ArrayList<>();
    for (Duration at = first; at.compareTo(until) < 0; at = at.plus(every)) {
      Duration end = at.plus(lasting);
      if (at.compareTo(LONGEST) < 0) {
        spans.add(new Span(at, end.compareTo(LONGEST) > 0 ? LONGEST : end, 1.0));
      }
    }
    return new DemandTimes(spans, Optional.empty());
  }

  /**
   * Obtains a recording of averages.
   *
   * @param spans the intervals, each with its average over the flow of the user
   * @param averagedOver how long an interval is
   * @return the times
   * @throws IllegalArgumentException if two overlap, or {@code averagedOver} is not above 0 s
   */
  public static DemandTimes recorded(List<Span> spans, Duration averagedOver) {
    Objects.requireNonNull(spans, "spans");
    if (Objects.requireNonNull(averagedOver, "averagedOver").isNegative()
        || averagedOver.isZero()) {
      throw new IllegalArgumentException(
          "interval of a recording must be above 0 s, was " + Seconds.told(averagedOver));
    }
    return new DemandTimes(List.copyOf(spans), Optional.of(averagedOver));
  }

  /** {@return the times, in their order} */
  public List<Span> spans() {
    return spans;
  }

  /** {@return the interval of a recording of averages, which hide every shorter peak; empty where it is none} */
  public Optional<Duration> averagedOver() {
    return averagedOver;
  }

  /**
   * Obtains the same air bunched: in each interval of a recording the whole of it is taken at full flow, at the end of
   * one and at the beginning of the next. The averages would show just the same. Peaks that last longer than two such
   * bursts would show in them.
   *
   * @return the bunched times; this where nothing was recorded in averages
   */
  public DemandTimes bunched() {
    if (averagedOver.isEmpty()) {
      return this;
    }
    List<Span> bursts = new ArrayList<>();
    for (int i = 0; i < spans.size(); i++) {
      Span span = spans.get(i);
      double seconds = span.load * Seconds.of(span.to.minus(span.from));
      Duration burst = Duration.ofNanos(Math.round(1.0e9 * seconds));
      if (burst.isZero()) {
        continue;
      }
      bursts.add(
          i % 2 == 0
              ? new Span(span.to.minus(burst), span.to, 1.0)
              : new Span(span.from, span.from.plus(burst), 1.0));
    }
    return new DemandTimes(bursts, averagedOver);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof DemandTimes that
        && spans.equals(that.spans)
        && averagedOver.equals(that.averagedOver);
  }

  @Override
  public int hashCode() {
    return Objects.hash(spans, averagedOver);
  }

  /** {@return the times in one line, such as "12 times, from 3600 s to 7200 s"} */
  @Override
  public String toString() {
    return spans.isEmpty()
        ? "never"
        : spans.size() + (spans.size() == 1 ? " time" : " times") + ", from "
            + Seconds.told(spans.get(0).from) + " to "
            + Seconds.told(spans.get(spans.size() - 1).to);
  }
}
