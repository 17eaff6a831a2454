package org.airfit.examples.jobsheet;

/** A file that can't be used. Its message is one line that names file, field, value and what is accepted. */
final class WrongFileException extends Exception {

  private static final long serialVersionUID = 1L;

  WrongFileException(String file, String field, String complaint) {
    super((field.isEmpty() ? file : file + ": " + field) + ": "
        + complaint.replaceAll("\\s+", " ").strip());
  }
}
