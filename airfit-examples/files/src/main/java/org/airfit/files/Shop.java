package org.airfit.files;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a shop puts at the head of its sheets.
 *
 * @param name its name
 * @param address the lines of its address; none where they were not told
 * @param phone its telephone number; empty where it was not told
 * @param currency the currency of its prices in three letters; empty where it was not told
 * @param validDays for how many days an offer holds; empty where nothing is promised
 * @param tax what the shop says of tax, a sentence; empty where nothing is said
 */
public record Shop(
    String name,
    List<String> address,
    Optional<String> phone,
    Optional<String> currency,
    Optional<Integer> validDays,
    Optional<String> tax) {

  /** The name of the settings file of a shop. */
  public static final String FILE = "letterhead.json";

  private static final int MOST_DAYS = 3650;

  /**
   * Copies the list; refuses what is null.
   *
   * @param name its name
   * @param address the lines of its address; none where they were not told
   * @param phone its telephone number; empty where it was not told
   * @param currency the currency of its prices in three letters; empty where it was not told
   * @param validDays for how many days an offer holds; empty where nothing is promised
   * @param tax what the shop says of tax, a sentence; empty where nothing is said
   * @throws IllegalArgumentException if {@code validDays} is not in [1, 3650]
   */
  public Shop {
    Objects.requireNonNull(name, "name");
    address = List.copyOf(Objects.requireNonNull(address, "address"));
    Objects.requireNonNull(phone, "phone");
    Objects.requireNonNull(currency, "currency");
    Objects.requireNonNull(validDays, "validDays");
    Objects.requireNonNull(tax, "tax");
    validDays.ifPresent(days -> {
      if (days < 1 || days > MOST_DAYS) {
        throw new IllegalArgumentException(
            "valid days of an offer must be in [1, " + MOST_DAYS + "], were " + days);
      }
    });
  }

  /**
   * Reads the settings of a shop; docs/letterhead-file.md has the fields.
   *
   * @param document a JSON file
   * @return the settings
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static Shop read(Document document) throws WrongFileException {
    Field root = Field.of(document);
    String name = root.field("name", "the name of the shop").text();
    Optional<Field> address = root.find("address", "a list of lines");
    Optional<Field> phone = root.find("phone", "a text");
    Optional<Field> currency = root.find("currency", "three letters such as \"USD\"");
    Optional<Field> days = root.find("validDays", "a number of days such as 30");
    Optional<Field> tax = root.find("tax", "a sentence such as \"Prices without sales tax.\"");
    root.requireNothingElse();
    Optional<String> letters =
        currency.isPresent() ? Optional.of(currency.get().as(Shop::currency)) : Optional.empty();
    List<String> lines = address.isPresent() ? address.get().words() : List.of();
    Optional<String> number =
        phone.isPresent() ? Optional.of(phone.get().text()) : Optional.empty();
    Optional<Integer> valid =
        days.isPresent() ? Optional.of(days.get().wholeNumber()) : Optional.empty();
    Optional<String> told = tax.isPresent() ? Optional.of(tax.get().text()) : Optional.empty();
    return root.build(() -> new Shop(name, lines, number, letters, valid, told));
  }

  private static String currency(String text) {
    if (!text.matches("[A-Z]{3}")) {
      throw new IllegalArgumentException("must be three capital letters such as USD");
    }
    return text;
  }
}
