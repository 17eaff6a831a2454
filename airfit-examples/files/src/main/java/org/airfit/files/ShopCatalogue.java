package org.airfit.files;

import java.util.List;
import java.util.Objects;
import org.airfit.plug.ReferenceSet;
import org.airfit.select.Catalogue;

/**
 * What a shop has: the plug profiles it knows and the parts it can offer.
 *
 * @param name the name of the catalogue
 * @param profiles the plug profiles
 * @param parts the parts
 * @param remarks what the writer of its ends ought to know, such as on "R 1/4 female"; empty for most
 */
public record ShopCatalogue(
    String name, ReferenceSet profiles, Catalogue parts, List<String> remarks) {

  /**
   * Copies the remarks; refuses what is null.
   *
   * @param name the name of the catalogue
   * @param profiles the plug profiles
   * @param parts the parts
   * @param remarks what the writer of its ends ought to know, such as on "R 1/4 female"; empty for most
   */
  public ShopCatalogue {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(profiles, "profiles");
    Objects.requireNonNull(parts, "parts");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
  }
}
