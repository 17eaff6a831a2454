// Which service stock comes from in the served page: GET of this address, beside the page.

export const SERVICE = 'stock/catalogue.json';
