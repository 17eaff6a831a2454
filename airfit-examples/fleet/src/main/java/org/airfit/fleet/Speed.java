package org.airfit.fleet;
final class Speed { static final long ROWS = 2_000_000; static void measure(long rows, java.io.PrintStream out) {} }
