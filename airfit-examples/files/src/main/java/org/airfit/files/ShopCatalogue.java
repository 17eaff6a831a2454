package org.airfit.files;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;
import org.airfit.select.Catalogue;
import org.airfit.select.Part;
import org.airfit.source.Source;

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

  /** The profiles with the sockets that take several of them: those that the set knows, and those among the parts. */
  ReferenceSet profilesWithSockets() {
    Map<String, UniversalSocket> sockets = new LinkedHashMap<>();
    profiles.sockets().forEach(socket -> sockets.put(socket.name(), socket));
    for (Part part : parts.parts()) {
      if (part instanceof Part.Socket socket && takesSeveral(socket)) {
        sockets.putIfAbsent(
            part.name(),
            new UniversalSocket(
                part.name(),
                socket.profiles(),
                Source.derived("part " + part.id() + " of the catalogue \"" + name + "\"")));
      }
    }
    return profiles.withSockets(sockets.values());
  }

  private boolean takesSeveral(Part.Socket socket) {
    return socket.profiles().size() > 1
        && socket.profiles().stream().allMatch(id -> profiles.profile(id).isPresent());
  }
}
