### The labels and descriptions of closed lists of the trade: a message for each member, `List-code`.
