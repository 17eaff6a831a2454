package org.airfit.jobsheet;

import java.io.FileDescriptor;
import java.io.InputStream;
import java.io.PrintStream;
import java.util.Arrays;

/**
 * Starts the program that is asked for: the job sheet, or by a word before the files the network sheet, the check
 * of a set, whether two ends go together, or the interview.
 */
public final class Main {

  private Main() {}

  /**
   * Runs the program; exit code 0 if a sheet was made, 2 if a file could not be used.
   *
   * @param args the job file, and the page to write (by default the job file's name with .html, in the current
   *     folder); or "network" and a network file; or "set" and a set file; or "joint" and two ends; or
   *     "interview" and the files that its program asks for
   */
  public static void main(String[] args) {
    System.exit(run(
        args,
        System.in,
        CommandLine.terminal(FileDescriptor.out),
        CommandLine.terminal(FileDescriptor.err)));
  }

  static int run(String[] args, PrintStream out, PrintStream err) {
    return run(args, InputStream.nullInputStream(), out, err);
  }

  static int run(String[] args, InputStream in, PrintStream out, PrintStream err) {
    String word = args.length == 0 ? "" : args[0];
    String[] files = args.length == 0 ? args : Arrays.copyOfRange(args, 1, args.length);
    return switch (word) {
      case "network" -> NetworkProgram.run(files, out, err);
      case "set" -> SetProgram.run(files, out, err);
      case "interview" -> InterviewProgram.run(files, in, out, err);
      case "joint" -> JointProgram.run(files, out, err);
      default -> JobProgram.run(args, out, err);
    };
  }
}
