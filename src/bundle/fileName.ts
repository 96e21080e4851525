/** Where the page that carries a record stands beside the app. */
export const fileName = "record-page.html";
