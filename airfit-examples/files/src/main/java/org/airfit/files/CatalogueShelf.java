package org.airfit.files;

/** A place with files that has read a catalogue before and need not read the very same texts again. */
public interface CatalogueShelf extends Document.Shelf {

  /**
   * Reads a catalogue with the profiles it names, or answers what the same texts gave before.
   *
   * @param path the path that stands in another file
   * @return the catalogue
   * @throws WrongFileException if it cannot be used
   */
  ShopCatalogue catalogue(String path) throws WrongFileException;
}
