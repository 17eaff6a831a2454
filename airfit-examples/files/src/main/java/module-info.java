/** Jobs, catalogues, reference sets and networks: JSON and CSV in and out; airfit's values and answers for Jackson. */
module org.airfit.files {
  requires static org.jspecify;
  requires transitive org.airfit.core;
  requires com.fasterxml.jackson.core;
  requires transitive com.fasterxml.jackson.databind;

  exports org.airfit.files;
  exports org.airfit.files.json;
  exports org.airfit.files.kept;

  provides com.fasterxml.jackson.databind.Module with
      org.airfit.files.json.AirfitModule;
}
