/** The id that every virtual sniffer answers with: by it a practice sniff is known wherever it turns up. */
export const VIRTUAL_SNIFFER_ID = "5e0d1e0000000001";
