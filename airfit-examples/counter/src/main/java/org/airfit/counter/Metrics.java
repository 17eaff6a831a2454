package org.airfit.counter;

import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.LongAdder;

/** Counts of questions by what was asked and how it ended, in the text form that Prometheus reads. */
final class Metrics {

  /** Up to so many milliseconds: our own choice. */
  private static final long[] BOUNDS = {5, 20, 100, 500, 2000};

  private static final double PER_SECOND = 1e3;
  private static final double NANOS_PER_SECOND = 1e9;

  private final Map<String, LongAdder> counts = new ConcurrentSkipListMap<>();
  private final Map<String, Times> times = new ConcurrentHashMap<>();

  private static final class Times {
    private final LongAdder[] within = new LongAdder[BOUNDS.length];
    private final LongAdder all = new LongAdder();
    private final LongAdder nanos = new LongAdder();

    Times() {
      for (int i = 0; i < within.length; i++) {
        within[i] = new LongAdder();
      }
    }
  }

  /** Counts an answer. */
  void count(String endpoint, int status, long nanos) {
    counts
        .computeIfAbsent(
            "endpoint=\"" + endpoint + "\",status=\"" + status + "\"", key -> new LongAdder())
        .increment();
    Times its = times.computeIfAbsent(endpoint, key -> new Times());
    for (int i = 0; i < BOUNDS.length; i++) {
      if (nanos <= BOUNDS[i] * 1_000_000) {
        its.within[i].increment();
      }
    }
    its.all.increment();
    its.nanos.add(nanos);
  }

  /** All counts, and how many questions are being computed. */
  String toText(int computing) {
    StringBuilder text = new StringBuilder();
    text.append("# TYPE airfit_questions_total counter\n");
    counts.forEach((labels, count) -> text.append("airfit_questions_total{")
        .append(labels)
        .append("} ")
        .append(count.sum())
        .append('\n'));
    text.append("# TYPE airfit_answer_seconds histogram\n");
    new ConcurrentSkipListMap<>(times).forEach((endpoint, its) -> {
      for (int i = 0; i < BOUNDS.length; i++) {
        line(text, "bucket", endpoint, ",le=\"" + BOUNDS[i] / PER_SECOND + "\"");
        text.append(its.within[i].sum()).append('\n');
      }
      line(text, "bucket", endpoint, ",le=\"+Inf\"");
      text.append(its.all.sum()).append('\n');
      line(text, "sum", endpoint, "");
      text.append(String.format(Locale.ROOT, "%.6f", its.nanos.sum() / NANOS_PER_SECOND))
          .append('\n');
      line(text, "count", endpoint, "");
      text.append(its.all.sum()).append('\n');
    });
    text.append("# TYPE airfit_computing gauge\nairfit_computing ")
        .append(computing)
        .append('\n');
    return text.toString();
  }

  private static void line(StringBuilder text, String what, String endpoint, String more) {
    text.append("airfit_answer_seconds_")
        .append(what)
        .append("{endpoint=\"")
        .append(endpoint)
        .append('"')
        .append(more)
        .append("} ");
  }
}
