/** In place of an order, while nobody knows whether it still holds. */
export const DO_NOT_TURN = 'Hold. Do not turn';
