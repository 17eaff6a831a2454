package org.airfit.fleet;

import org.apache.spark.SparkConf;
import org.apache.spark.sql.SparkSession;

/** The session of Spark: that which spark-submit asks for, or one on this machine. */
final class Sessions {

  private static final String MASTER = "spark.master";

  private Sessions() {}

  static SparkSession open() {
    SparkConf asked = new SparkConf();
    return asked.contains(MASTER) ? begin(asked) : local("local[*]");
  }

  /** On this machine, with nothing to be reached from outside. */
  static SparkSession local(String master) {
    return begin(new SparkConf()
        .set(MASTER, master)
        .set("spark.ui.enabled", "false")
        .set("spark.driver.host", "127.0.0.1")
        .set("spark.driver.bindAddress", "127.0.0.1")
        .set("spark.sql.shuffle.partitions", "8"));
  }

  private static SparkSession begin(SparkConf conf) {
    conf.setIfMissing("spark.app.name", "airfit fleet");
    // verdicts and rejects are written at once, without a sort
    conf.setIfMissing("spark.sql.maxConcurrentOutputFileWriters", "8");
    conf.setIfMissing("spark.sql.session.timeZone", "UTC");
    return SparkSession.builder().config(conf).getOrCreate();
  }
}
