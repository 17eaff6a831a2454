package org.airfit.counter;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Why a question is not answered, as RFC 9457 writes it. */
final class Problem extends Exception {

  static final String TYPE = "application/problem+json";

  /** So much is told in one field of a problem [letters]; our own choice. */
  private static final int LONGEST = 800;

  private static final long serialVersionUID = 1L;

  private final int status;
  private final String kind;
  private final Map<String, String> more = new LinkedHashMap<>();

  /**
   * Makes one.
   *
   * @param status the status of HTTP
   * @param kind a word for it, the same for all of its kind
   * @param detail what is wrong with this question, and what to do
   */
  Problem(int status, String kind, String detail) {
    this(status, kind, detail, null);
  }

  /**
   * Makes one of something that failed here, which is noted and never told.
   *
   * @param status the status of HTTP
   * @param kind a word for it, the same for all of its kind
   * @param detail what is wrong, and what to do
   * @param cause what failed; null where nothing did
   */
  Problem(int status, String kind, String detail, @Nullable Throwable cause) {
    super(shortened(detail), cause, false, false);
    this.status = status;
    this.kind = kind;
  }

  /** What cannot be used of what was asked. */
  static Problem field(String field, String complaint, String accepted) {
    return new Problem(
            422,
            "field",
            field + ": " + complaint + (accepted.isEmpty() ? "" : "; accepted: " + accepted))
        .with("field", field)
        .with("accepted", accepted);
  }

  /** Says more, where there is more to say. */
  Problem with(String field, String value) {
    if (!value.isEmpty()) {
      more.put(field, shortened(value));
    }
    return this;
  }

  /** A complaint tells back what was sent; of what is long, how it begins and ends. */
  private static String shortened(String text) {
    int letters = text.codePointCount(0, text.length());
    return letters <= LONGEST
        ? text
        : text.substring(0, text.offsetByCodePoints(0, LONGEST / 2)) + " … "
            + text.substring(text.offsetByCodePoints(text.length(), -LONGEST / 2));
  }

  int status() {
    return status;
  }

  /** Whether the rest of the body is still on its way, so that the connection is of no more use. */
  boolean isAmidBody() {
    return status == 408 || status == 413;
  }

  private static String title(int status) {
    return switch (status) {
      case 400 -> "The question cannot be read";
      case 401 -> "A token is wanted";
      case 403 -> "Not from there";
      case 404 -> "There is no such thing";
      case 405 -> "Not in this way";
      case 408 -> "The question did not come in time";
      case 409 -> "It cannot be done as things stand";
      case 413 -> "The question is too long";
      case 415 -> "The question is not JSON";
      case 422 -> "Something in the question cannot be used";
      case 503 -> "Not now";
      default -> status < 500 ? "The question cannot be used" : "Something failed here";
    };
  }

  Map<String, Object> toObject() {
    Map<String, Object> object = new LinkedHashMap<>();
    object.put("type", "urn:airfit:" + kind);
    object.put("title", title(status));
    object.put("status", status);
    object.put("detail", String.valueOf(getMessage()));
    object.putAll(more);
    return object;
  }
}
