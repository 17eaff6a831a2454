package org.airfit.fleet;

import static org.apache.spark.sql.functions.col;

import java.io.IOException;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.functions;

/** The rows without a verdict: all of them as a table, and why they are refused. */
final class Rejects {

  private Rejects() {}

  /** Writes them into a summary. */
  static void add(Summary summary, Dataset<Row> answers) throws IOException {
    Dataset<Row> rejects = answers
        .where(col(Outcome.COLUMN).equalTo(Outcome.REJECT))
        .select("key", "field", "value", "reason");
    summary.table(
        "reasons",
        "Why rows were rejected",
        rejects
            .groupBy("field", "reason")
            .agg(functions.count("*").as("rows"), functions.min("key").as("firstKey"))
            .orderBy(col("rows").desc(), col("field"), col("reason")));
    summary.table("rejects", "Rejected rows", rejects.orderBy("key", "field"));
  }
}
