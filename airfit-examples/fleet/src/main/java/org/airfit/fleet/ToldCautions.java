package org.airfit.fleet;

import java.io.Serializable;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.safety.Caution;
import org.airfit.source.Source;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.util.CollectionAccumulator;

/**
 * The cautions of the answers of a partition. A row tells their titles; their texts, which recur a million times, are
 * told to the program that asks, once from each partition, and stand on the page of the summary.
 */
final class ToldCautions {

  private static final String BETWEEN = "\u001f";

  private final Optional<CollectionAccumulator<String>> texts;
  private final Set<String> told = new HashSet<>();

  private ToldCautions(Optional<CollectionAccumulator<String>> texts) {
    this.texts = texts;
  }

  /** Where the texts are gathered from all partitions; Spark sends it to them. */
  record Everywhere(CollectionAccumulator<String> texts) implements Serializable {

    static Everywhere in(SparkSession spark) {
      return new Everywhere(spark.sparkContext().collectionAccumulator("cautions"));
    }

    ToldCautions ofPartition() {
      return new ToldCautions(Optional.of(texts));
    }

    /** Every caution that was told, by title. */
    List<Caution> all() {
      Map<String, Caution> all = new LinkedHashMap<>();
      for (String each : texts.value()) {
        int at = each.indexOf(BETWEEN);
        String title = each.substring(0, at);
        all.putIfAbsent(
            title,
            new Caution(title, each.substring(at + 1), Source.derived("told with the answers")));
      }
      return List.copyOf(all.values());
    }
  }

  /** Of a caller that gathers no texts. */
  static ToldCautions titlesOnly() {
    return new ToldCautions(Optional.empty());
  }

  /** The titles for a row. */
  String[] titles(List<Caution> cautions) {
    String[] titles = new String[cautions.size()];
    for (int i = 0; i < titles.length; i++) {
      Caution caution = cautions.get(i);
      titles[i] = caution.title();
      if (texts.isPresent() && told.add(caution.title())) {
        texts.get().add(caution.title() + BETWEEN + caution.text());
      }
    }
    return titles;
  }
}
