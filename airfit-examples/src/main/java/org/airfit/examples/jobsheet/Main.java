package org.airfit.examples.jobsheet;

/** Prints a job sheet. */
public final class Main {

  private Main() {}

  /**
   * Runs the program.
   *
   * @param args a job file
   */
  public static void main(String[] args) {}
}
