/**
 * What the tables say of a source in words of their own, in German. A published title stays as it was published; the
 * laws of the European Union have a German one: Official Journal of the European Union.
 */
export const GERMAN_SOURCE_WORDS: readonly (readonly [english: string, german: string])[] = [
  ["secondary quotation", "Sekundärzitat"],
  ["value from memory", "Wert aus dem Gedächtnis"],
  ["common practice: what the word covers", "übliche Praxis: was das Wort umfasst"],
  ["common usage, no legal definition", "üblicher Gebrauch, rechtlich nicht bestimmt"],
  ["schools differ on this", "die Rechtsschulen sind sich nicht einig"],
  ["basic rules of kashrut", "Grundregeln der Kaschrut"],
  ["additive lists", "Zusatzstofflisten"],
  ["intolerance advice", "Ratgeber zu Unverträglichkeiten"],
  ["aged cheese and butterfat hold little lactose", "gereifter Käse und Butterfett enthalten wenig Laktose"],
  [
    "footnote 1: oats are tolerated by most but not all",
    "Fußnote 1: Die meisten vertragen Hafer, aber nicht alle",
  ],
  ["not in the legal list of this jurisdiction", "nicht auf der gesetzlichen Liste dieses Rechtsraums"],
  ["the user's own word", "dein eigenes Wort"],
  ["kept in the revision", "in der Überarbeitung beibehalten"],
  ["the basis of the CXS 1 revision", "Grundlage der Überarbeitung von CXS 1"],
  [
    "covers exactly these; that they form s.4.2.1.5 is MEMORY",
    "nennt genau diese; dass sie s.4.2.1.5 bilden, ist aus dem Gedächtnis",
  ],
  ["25 October 2011, amended 2014", "25. Oktober 2011, geändert 2014"],
  [
    "25 February 2021; stock in trade until 25 February 2026",
    "25. Februar 2021; Lagerware bis 25. Februar 2026",
  ],
  ["leaflet of 2017", "Merkblatt von 2017"],
  ["revised 2024", "überarbeitet 2024"],
  [
    "walnut from 9 March 2023 (transition until 31 March 2025)",
    "Walnuss ab 9. März 2023 (Übergang bis 31. März 2025)",
  ],
  ["prepacked for direct sale from 1 October 2021", "zum Direktverkauf vorverpackt ab 1. Oktober 2021"],
  ["1 January 2006; sesame from 1 January 2023", "1. Januar 2006; Sesam ab 1. Januar 2023"],
  ["Assimilated Regulation (EU) No", "Ins britische Recht übernommene Verordnung (EU) Nr."],
  ["assimilated Regulation (EU) No", "ins britische Recht übernommene Verordnung (EU) Nr."],
  ["(as amended by", "(geändert durch"],
  [" as amended by", ", geändert durch"],
  ["Delegated Regulation (EU) No", "Delegierte Verordnung (EU) Nr."],
  ["Regulation (EU) No", "Verordnung (EU) Nr."],
  ["Annex II", "Anhang II"],
];
