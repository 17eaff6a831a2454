package org.airfit.files;

import java.util.Objects;
import org.airfit.plug.ReferenceSet;
import org.airfit.select.Catalogue;

/**
 * What a shop has: the plug profiles it knows and the parts it can offer.
 *
 * @param name the name of the catalogue
 * @param profiles the plug profiles
 * @param parts the parts
 */
public record ShopCatalogue(String name, ReferenceSet profiles, Catalogue parts) {

  /**
   * Refuses what is null.
   *
   * @param name the name of the catalogue
   * @param profiles the plug profiles
   * @param parts the parts
   */
  public ShopCatalogue {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(profiles, "profiles");
    Objects.requireNonNull(parts, "parts");
  }
}
