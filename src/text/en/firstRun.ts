/** The first run: what it is, what it cannot do, who you are, a first try. */
export const firstRun = {
  steps: (step: string, all: string) => `${step} of ${all}`,
  skip: "Skip",
  next: "Next",
  what: {
    title: "Smell what is on a plate somebody else cooked",
    text: "A pocket sniffer and this phone tell you what stands out, what usually hides in the dish, and what to ask the kitchen.",
  },
  cannot: {
    title: "What it cannot do",
    text: "It cannot find or clear allergens, traces, gluten or lactose: they have no smell. It is no medical device. When an answer is worthless, it says so.",
  },
  who: {
    title: "What do you avoid?",
    text: "Diet, allergies and intolerances stay on this phone. Without them there are no cautions.",
    button: "Enter it now",
  },
  start: {
    title: "Try it in a minute",
    text: "The virtual sniffer and the practice kitchen need no hardware.",
    button: "Try the virtual sniffer",
    pair: "I have a sniffer",
  },
};
