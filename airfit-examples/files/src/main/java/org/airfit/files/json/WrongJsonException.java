package org.airfit.files.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonMappingException;

/**
 * JSON that is not a value of airfit. Its message is one line: the field, what stands there and what is accepted.
 *
 * <p>Texts of the document are cut at 60 signs, and signs that steer a terminal are shown as their code.
 */
public final class WrongJsonException extends JsonMappingException {

  private static final long serialVersionUID = 1L;

  private static final String ACCEPTED = "; accepted: ";

  /** The field inside the value of airfit. */
  private final String inside;
  /** What is wrong there. */
  private final String complaint;

  WrongJsonException(JsonParser parser, String inside, String complaint) {
    super(parser, complaint);
    this.inside = inside;
    this.complaint = complaint;
  }

  /** {@return the place in the document, such as "parts[2].facts.price", counted from 1; empty for the whole} */
  public String field() {
    StringBuilder place = new StringBuilder();
    for (Reference step : getPath()) {
      if (step.getFieldName() != null) {
        place.append(place.length() == 0 ? "" : ".").append(step.getFieldName());
      } else {
        place.append('[').append(step.getIndex() + 1).append(']');
      }
    }
    boolean isJoined = place.length() == 0 || inside.isEmpty() || inside.startsWith("[");
    return place + (isJoined ? "" : ".") + inside;
  }

  /** {@return what stands there and what is accepted instead} */
  public String complaint() {
    return complaint;
  }

  /** {@return what is accepted there; empty where the complaint does not list it} */
  public String accepted() {
    int at = complaint.lastIndexOf(ACCEPTED);
    return at < 0 ? "" : complaint.substring(at + ACCEPTED.length());
  }

  @Override
  public String getMessage() {
    String field = field();
    return field.isEmpty() ? complaint : field + ": " + complaint;
  }

  @Override
  public String toString() {
    return getClass().getName() + ": " + getMessage();
  }
}
