package org.airfit.files;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.select.Catalogue;
import org.airfit.select.JobMix;
import org.airfit.select.PriceList;
import org.airfit.working.UnitSystem;

/**
 * What a check of a price list is asked of.
 *
 * @param title what is asked
 * @param customer whose list it is
 * @param list the articles that could be read
 * @param catalogue the same as jobs choose from, of an article that stands twice the first
 * @param unread what keeps articles from being read, in the order of the file
 * @param mix what jobs come; empty where that is not told
 * @param units the units of its sheet
 * @param remarks what the writer of the list ought to know; empty for most
 */
public record PriceListJob(
    String title,
    String customer,
    PriceList list,
    Catalogue catalogue,
    List<UnreadArticle> unread,
    Optional<JobMix> mix,
    UnitSystem units,
    List<String> remarks) {

  /**
   * Copies the lists; refuses what is null.
   *
   * @param title what is asked
   * @param customer whose list it is
   * @param list the articles that could be read
   * @param catalogue the same as jobs choose from, of an article that stands twice the first
   * @param unread what keeps articles from being read, in the order of the file
   * @param mix what jobs come; empty where that is not told
   * @param units the units of its sheet
   * @param remarks what the writer of the list ought to know; empty for most
   */
  public PriceListJob {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(list, "list");
    Objects.requireNonNull(catalogue, "catalogue");
    unread = List.copyOf(Objects.requireNonNull(unread, "unread"));
    Objects.requireNonNull(mix, "mix");
    Objects.requireNonNull(units, "units");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
  }
}
